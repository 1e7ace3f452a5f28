import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import type { AccountRole } from '../../register/account-tables.ts';

/** Somewhere to go from a fence. */
interface Way {
  readonly under: string;
  readonly text: Readonly<Record<ChartLanguage, string>>;
  readonly roles: readonly AccountRole[];
}

/** What can be done from the page of a fence, in the order of use. */
const WAYS: readonly Way[] = [
  { under: 'inspect', text: { en: 'Enter an inspection', es: 'Anotar una inspección' }, roles: ['office'] },
  { under: 'works', text: { en: 'Enter works done', es: 'Anotar trabajos hechos' }, roles: ['office'] },
  {
    under: 'what-if',
    text: { en: 'See what works would change', es: 'Ver qué cambiarían unos trabajos' },
    roles: ['office', 'crew', 'board'],
  },
  {
    under: 'entries',
    text: { en: 'Correct or take back an entry', es: 'Corregir o retirar una anotación' },
    roles: ['office'],
  },
  { under: 'edit', text: { en: 'Change its record', es: 'Cambiar su registro' }, roles: ['office'] },
];
const DOCUMENTS: Readonly<Record<ChartLanguage, string>> = {
  en: 'Reports to print',
  es: 'Informes para imprimir',
};
const LABEL: Readonly<Record<ChartLanguage, string>> = { en: 'For this fence', es: 'Para esta cerca' };

/** Links to what whoever looks can do about a fence. */
export const FenceWays: FC<{
  readonly fenceRef: string;
  readonly role: AccountRole;
  readonly language: ChartLanguage;
}> = ({ fenceRef, role, language }) => (
  <nav class="ways-on" aria-label={LABEL[language]}>
    <ul>
      {WAYS.filter(({ roles }) => roles.includes(role)).map(({ under, text }) => (
        <li>
          <a href={`/fences/${encodeURIComponent(fenceRef)}/${under}`}>{text[language]}</a>
        </li>
      ))}
      <li>
        <a href={`/documents?fence=${encodeURIComponent(fenceRef)}`}>{DOCUMENTS[language]}</a>
      </li>
    </ul>
  </nav>
);
