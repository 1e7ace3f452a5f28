import type { Child, FC } from 'hono/jsx';
import type { Account } from '../../register/account-store.ts';
import { TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { PHONE_SCRIPT_PATH } from './crew-script.ts';
import { CREW_WORDS } from './crew-words-of.ts';

/** Who looks at a page of the crew, and what its forms carry. */
export interface CrewVisitor {
  readonly frame: PageFrame;
  readonly account: Pick<Account, 'id' | 'role' | 'language' | 'crewRef'>;
  readonly formToken: string;
  /** An id that was never given, for a form that is sent without a script. */
  readonly newEntryId: () => string;
}

/** A page of the crew, with the script that keeps it and its entries on the phone. */
export const CrewPage: FC<{
  readonly title: string;
  readonly visitor: CrewVisitor;
  readonly children?: Child;
}> = ({ title, visitor, children }) => {
  const { account, frame } = visitor;
  const { phone } = CREW_WORDS[account.language];
  return (
    <PageShell title={title} section="today" frame={frame} cautions={true} language={account.language}>
      <div class="crew">
        <div
          id="phone"
          class="phone"
          data-account={String(account.id)}
          data-keeps={account.role === 'crew' ? 'yes' : 'no'}
          data-words={JSON.stringify(phone)}
        >
          <p id="phone-state" role="status" hidden></p>
          <ul id="phone-entries" class="kept-entries" hidden></ul>
        </div>
        {children}
        <p id="phone-kept" class="hint" hidden></p>
      </div>
      <script type="module" src={PHONE_SCRIPT_PATH}></script>
    </PageShell>
  );
};

/** A form whose entry a script may keep until there is a signal. */
export const EntryForm: FC<{
  readonly visitor: CrewVisitor;
  readonly action: string;
  /** What it is called among the entries that wait. */
  readonly title: string;
  readonly kind: 'reading' | 'closed-off' | 'taken-back' | 'photo' | 'visit-done';
  readonly class?: string;
  readonly children?: Child;
}> = ({ visitor, action, title, kind, class: className, children }) => (
  <form
    class={className}
    method="post"
    action={action}
    enctype={kind === 'photo' ? 'multipart/form-data' : undefined}
    data-entry={kind}
    data-title={title}
  >
    <TokenField token={visitor.formToken} />
    <input type="hidden" name="entry" value={visitor.newEntryId()} />
    {children}
  </form>
);
