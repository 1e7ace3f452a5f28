import type { DateTime } from 'luxon';
import { type Account, accountNamed } from '../register/account-store.ts';
import type { Register } from '../register/database.ts';
import {
  countTry,
  type FailureCount,
  type FailureKey,
  forgetFailuresBefore,
  takeTryBack,
} from '../register/sign-in-failure-store.ts';
import { foldedName } from './account-rules.ts';
import { sha256 } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { isPasswordOf } from './password-hash.ts';

/**
 * Tries without a wait. Waits belong to an address, so that a stranger who types wrong passwords elsewhere never keeps
 * anybody out.
 */
const FREE_TRIES = { account: 4, address: 20 } as const;
/** Longest wait after a failed try [s]; the first is two seconds and each further one twice as long. */
const LONGEST_WAIT_S = 15 * 60;
/** A count is forgotten so long after its last try [h]. */
const FORGOTTEN_AFTER_H = 24;

/** What a try to sign in came to. */
export type SignInOutcome =
  | { readonly kind: 'in'; readonly account: Account }
  /** No such name, another password, or a disabled account: it is not told which. */
  | { readonly kind: 'wrong' }
  /** Too many tries: none is looked at for so long [s]. */
  | { readonly kind: 'wait'; readonly seconds: number };

/** Who is tried from where. Names are kept as digests: some type their password into the field for the name. */
const keysOf = (name: string, address: string): readonly FailureKey[] => [
  { kind: 'account', key: sha256(`${foldedName(name)} ${address}`) },
  { kind: 'address', key: address },
];

const nextCount =
  (now: DateTime) =>
  ({ kind }: FailureKey, before: FailureCount | null): FailureCount => {
    const forgotten = isoUtc(now.minus({ hours: FORGOTTEN_AFTER_H }));
    const count = (before && before.lastAt > forgotten ? before.count : 0) + 1;
    const past = count - FREE_TRIES[kind];
    const seconds = past <= 0 ? 0 : Math.min(LONGEST_WAIT_S, 2 ** past);
    return { count, lastAt: isoUtc(now), waitUntil: isoUtc(now.plus({ seconds })) };
  };

const secondsUntil = (moment: string, now: DateTime): number =>
  Math.max(1, Math.ceil((Date.parse(moment) - now.toMillis()) / 1000));

/**
 * Counts a try against its address before it is looked at. Null where it may be; else how long to wait [s]. Also for codes
 * and whatever else could be guessed.
 * @param name what is tried, whoever it belongs to
 */
export async function waitBeforeTry(
  register: Register,
  name: string,
  address: string,
  now: DateTime,
): Promise<number | null> {
  const until = await countTry(register, keysOf(name, address), isoUtc(now), nextCount(now));
  return until === null ? null : secondsUntil(until, now);
}

/** Takes a try back that turned out right. */
export const tryWasRight = (register: Register, name: string, address: string): Promise<void> =>
  takeTryBack(register, keysOf(name, address));

/**
 * Tries a name with a password. A name that nobody has takes as long as one with another password.
 * @param attempt.address where the try comes from
 */
export async function trySignIn(
  register: Register,
  attempt: { readonly name: string; readonly password: string; readonly address: string },
  clock: Clock,
): Promise<SignInOutcome> {
  const { name, password, address } = attempt;
  const now = clock();
  const seconds = await waitBeforeTry(register, name, address, now);
  if (seconds !== null) return { kind: 'wait', seconds };
  const found = await accountNamed(register.db, foldedName(name));
  const isRight = await isPasswordOf(password, found?.passwordHash ?? null);
  if (!found || !isRight || found.account.disabledAt !== null) return { kind: 'wrong' };
  await tryWasRight(register, name, address);
  await forgetFailuresBefore(register.db, isoUtc(now.minus({ hours: FORGOTTEN_AFTER_H })));
  return { kind: 'in', account: found.account };
}
