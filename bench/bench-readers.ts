import { addAccount } from '../src/register/account-store.ts';
import type { AccountRole } from '../src/register/account-tables.ts';
import type { Register } from '../src/register/database.ts';
import { newApiToken } from '../src/service/api-tokens.ts';
import { type Clock, isoUtc } from '../src/service/clock.ts';
import { startSession } from '../src/service/sessions.ts';
import type { Reader } from './listed-pages.ts';

/** What a reader shows with every page it asks for. */
export type Shown = Readonly<Record<Reader, Readonly<Record<string, string>>>>;

/** Signs an office, the board of three sites and a crew in, and makes a token for a program. */
export async function benchReaders(
  register: Register,
  { siteRefs, crewRef, now }: { readonly siteRefs: readonly string[]; readonly crewRef: string; readonly now: Clock },
): Promise<Shown> {
  const signedIn = async (role: AccountRole): Promise<Readonly<Record<string, string>>> => {
    const made = await addAccount(
      register,
      {
        // another name for each run over a register that was kept
        name: `bench ${role} ${now().toMillis()}`,
        displayName: 'Bench',
        role,
        crewRef: role === 'crew' ? crewRef : null,
        language: 'en',
        passwordHash: null,
        siteRefs: role === 'board' ? siteRefs : [],
      },
      { now: isoUtc(now()), onlyAsFirst: false },
    );
    if ('refused' in made) throw new Error(made.refused);
    return { cookie: `stormpale=${(await startSession(register, made.account, null, now)).token}` };
  };
  const scopes = ['read-fences', 'read-register'] as const;
  const { text } = await newApiToken(register.db, { name: 'bench', scopes, days: 1 }, now);
  return {
    office: await signedIn('office'),
    board: await signedIn('board'),
    crew: await signedIn('crew'),
    program: { authorization: `Bearer ${text}` },
  };
}
