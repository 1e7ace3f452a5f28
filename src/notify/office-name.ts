import type { MessageLanguage, OfficeFacts } from './message-facts.ts';

const UNNAMED: Readonly<Record<MessageLanguage, string>> = { en: 'Fence office', es: 'Oficina de cercas' };

/** The office's name as a message in that language calls it; a plain word for one that gave no name. */
export const officeName = (office: Pick<OfficeFacts, 'name'>, language: MessageLanguage): string =>
  office.name ?? UNNAMED[language];
