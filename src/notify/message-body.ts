import type { MessagePicture } from './message-facts.ts';
import type { LinksBlock } from './message-links.ts';

/** One block of a message's body; a message is rendered from its blocks to plain text and to HTML alike. */
export type BodyBlock =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string }
  /** The answer: the first lines, set apart. */
  | { readonly kind: 'answer'; readonly title: string; readonly lines: readonly string[] }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'picture'; readonly picture: MessagePicture }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  | LinksBlock
  | { readonly kind: 'small'; readonly text: string };

/** The body of a message, in order, and its language. */
export interface MessageBody {
  readonly language: 'en' | 'es';
  readonly title: string;
  readonly blocks: readonly BodyBlock[];
}
