import type { Child, FC } from 'hono/jsx';
import { TokenField } from '../frame/form-field.tsx';
import { PageShell } from '../frame/page-shell.tsx';
import type { OwnerView } from './owner-view.ts';
import { OWNER_PLACES, OWNER_SHELL_WORDS, type OwnerPlace } from './shell-words.ts';

/** The frame of every page behind an owner's link: the line of their pages, what the page says, what the link is. */
export const OwnerShell: FC<{
  readonly view: OwnerView;
  readonly title: string;
  readonly place: OwnerPlace | null;
  /** False on pages that show no capacity. */
  readonly cautions: boolean;
  readonly children?: Child;
}> = ({ view, title, place, cautions, children }) => {
  const { owner, link, home, frame } = view;
  const words = OWNER_SHELL_WORDS[owner.language];
  const open = OWNER_PLACES.filter(({ scope }) => link.scopes.includes(scope));
  return (
    <PageShell
      title={title}
      section={null}
      frame={frame}
      cautions={cautions}
      language={owner.language}
      home={`${home}${open[0]?.path ?? ''}`}
    >
      {open.length > 1 && (
        <nav class="owner-places" aria-label={words.pages}>
          <ul>
            {open.map((each) => (
              <li>
                <a href={`${home}${each.path}`} aria-current={each.place === place ? 'page' : undefined}>
                  {words.places[each.place]}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
      {children}
      <p class="muted link-note">{words.linkNote(view.dayOf(link.expiresAt))}</p>
    </PageShell>
  );
};

/** A form with one button and nothing to fill in. */
export const OneButton: FC<{
  readonly view: OwnerView;
  readonly action: string;
  readonly button: string;
  readonly hidden?: Readonly<Record<string, string>>;
  readonly children?: Child;
}> = ({ view, action, button, hidden = {}, children }) => (
  <form method="post" action={action} class="one-button">
    <TokenField token={view.formToken} />
    {Object.entries(hidden).map(([name, value]) => (
      <input type="hidden" name={name} value={value} />
    ))}
    {children}
    <button type="submit">{button}</button>
  </form>
);

/** What came of a form, read out at once. */
export const Said: FC<{ readonly children?: Child }> = ({ children }) => (
  <p class="done" role="status">
    {children}
  </p>
);
