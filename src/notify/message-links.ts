import { escapeXml } from '../drawing/svg-element.ts';
import type { MessageLanguage, MessageLinks } from './message-facts.ts';

/** One thing that a reader can do by a link. */
interface LinkToFollow {
  readonly text: string;
  readonly url: string;
}

/** The block of a message that says what its reader can do without an account. */
export interface LinksBlock {
  readonly kind: 'links';
  readonly links: readonly LinkToFollow[];
  /** What the links are good for and for how long. */
  readonly note: string;
}

interface LinkWords {
  readonly heading: string;
  readonly seeOne: (ref: string) => string;
  readonly seeAll: string;
  readonly read: string;
  readonly visits: string;
  readonly call: string;
  readonly preferences: string;
  readonly note: (until: string) => string;
}

const WORDS: Readonly<Record<MessageLanguage, LinkWords>> = {
  en: {
    heading: 'Answer without an account',
    seeOne: (ref) => `See fence ${ref}: its chart, what it holds, what we suggest`,
    seeAll: 'See your fences: what each holds and what we suggest',
    read: 'Tell us that you have read this',
    visits: 'See visits, choose a date where one is open, see quotes',
    call: 'Ask us to call you',
    preferences: 'Choose what we write to you about, and in which language',
    note: (until) =>
      `These links are yours: whoever has them can answer for you. They open until ${until}. Opening one changes nothing; each page has a button that does.`,
  },
  es: {
    heading: 'Responder sin cuenta',
    seeOne: (ref) => `Ver la cerca ${ref}: su gráfica, lo que aguanta, lo que proponemos`,
    seeAll: 'Ver sus cercas: lo que aguanta cada una y lo que proponemos',
    read: 'Decirnos que lo ha leído',
    visits: 'Ver visitas, elegir fecha donde se pueda, ver presupuestos',
    call: 'Pedir que le llamemos',
    preferences: 'Elegir de qué le escribimos, y en qué idioma',
    note: (until) =>
      `Estos enlaces son suyos: quien los tenga puede responder por usted. Se abren hasta el ${until}. Abrir uno no cambia nada; cada página tiene un botón que sí lo hace.`,
  },
};

/** What stands above the links. */
export const linksHeading = (language: MessageLanguage): string => WORDS[language].heading;

/** What a reader of a message can do: about one fence, or (null) about all in it. */
export function linksBlock(
  { pages, until }: MessageLinks,
  fenceRef: string | null,
  language: MessageLanguage,
): LinksBlock {
  const words = WORDS[language];
  const page = fenceRef === null ? pages : `${pages}/fences/${encodeURIComponent(fenceRef)}`;
  return {
    kind: 'links',
    links: [
      { text: fenceRef === null ? words.seeAll : words.seeOne(fenceRef), url: page },
      { text: words.read, url: `${page}#read` },
      { text: words.visits, url: `${pages}/visits` },
      { text: words.call, url: `${pages}/call` },
      { text: words.preferences, url: `${pages}/preferences` },
    ],
    note: words.note(until),
  };
}

/** Style of the links in a mail's HTML part, in light and in dark. */
export const LINKS_STYLE = 'a{color:#26476a}';
export const LINKS_STYLE_DARK = 'a{color:#a9c9ea}';

/** The links in a mail's HTML part. */
export const linksHtml = ({ links, note }: LinksBlock): string =>
  `<ul>${links.map(({ text, url }) => `<li><a href="${escapeXml(url)}">${escapeXml(text)}</a></li>`).join('')}</ul><p class="small">${escapeXml(note)}</p>`;

/** The links in a mail's plain text: each address alone on its line, so that nothing breaks it. */
export const linksText = ({ links, note }: LinksBlock, wrap: (text: string) => string): string =>
  [...links.map(({ text, url }) => `${wrap(`- ${text}:`)}\n${url}`), '', wrap(note)].join('\n');
