import type { Account } from '../register/account-store.ts';
import type { RegisterDb } from '../register/record-store.ts';
import { readVisit } from '../register/visit-store.ts';
import type { Visit, VisitState } from '../season/visit/visit.ts';

/** Who opens or enters something of a visit. */
export type VisitingAccount = Pick<Account, 'id' | 'role' | 'crewRef' | 'displayName'>;

/** Why a visit is not shown to an account, or nothing may be entered on it. */
export type VisitRefusal =
  | { readonly kind: 'no such visit' }
  | { readonly kind: 'another crew'; readonly crewRef: string }
  | { readonly kind: 'off'; readonly state: VisitState }
  | { readonly kind: 'fence not on it'; readonly fenceRef: string };

/** True where an account may work on what a crew does: the office on all, a crew on its own, a crew's account of no crew on all. */
const worksWith = (account: Pick<Account, 'role' | 'crewRef'>, crewRef: string): boolean =>
  account.role === 'office' || (account.role === 'crew' && (account.crewRef === null || account.crewRef === crewRef));

/** A visit that an account may look at, or why it may not. */
export async function visitOfAccount(
  db: RegisterDb,
  uid: string,
  account: Pick<Account, 'role' | 'crewRef'>,
): Promise<{ readonly visit: Visit } | { readonly refused: VisitRefusal }> {
  const visit = await readVisit(db, uid);
  if (!visit) return { refused: { kind: 'no such visit' } };
  if (!worksWith(account, visit.crewRef)) return { refused: { kind: 'another crew', crewRef: visit.crewRef } };
  return { visit };
}

/** A visit on which an account may enter something of a fence, or why it may not: not where it was called off or missed. */
export async function visitToEnterOn(
  db: RegisterDb,
  place: { readonly uid: string; readonly fenceRef: string },
  account: Pick<Account, 'role' | 'crewRef'>,
): Promise<{ readonly visit: Visit } | { readonly refused: VisitRefusal }> {
  const found = await visitOfAccount(db, place.uid, account);
  if ('refused' in found) return found;
  const { state, items } = found.visit;
  if (state === 'missed' || state === 'cancelled') return { refused: { kind: 'off', state } };
  if (!items.some(({ fenceRef }) => fenceRef === place.fenceRef)) {
    return { refused: { kind: 'fence not on it', fenceRef: place.fenceRef } };
  }
  return found;
}

/** The ref of the inspection that a visit makes of a fence. */
export const visitInspectionRef = (uid: string, fenceRef: string): string => `${uid}/${fenceRef}`;
