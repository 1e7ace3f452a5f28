import type { BodyBlock, MessageBody } from './message-body.ts';
import { linksText } from './message-links.ts';

const LINE_CHARACTERS = 76;

function wrap(text: string, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line && indent.length + line.length + 1 + word.length > LINE_CHARACTERS) {
      lines.push(line);
      line = word;
    } else {
      line = line ? `${line} ${word}` : word;
    }
  }
  return [...lines, line].map((each, index) => (index === 0 ? each : `${indent}${each}`)).join('\n');
}

function blockText(block: BodyBlock): string {
  switch (block.kind) {
    case 'heading':
      return `${block.text}\n${'-'.repeat(block.text.length)}`;
    case 'paragraph':
    case 'small':
      return wrap(block.text);
    case 'answer':
      return [...block.lines.map((line) => wrap(line)), '', wrap(block.title)].join('\n');
    case 'list':
      return block.items.map((item) => `- ${wrap(item, '  ')}`).join('\n');
    case 'picture':
      return wrap(`[${block.picture.alt}]`);
    case 'links':
      return linksText(block, wrap);
    case 'table':
      return [
        block.caption,
        ...block.rows.map(
          (row) =>
            `- ${wrap(row.map((cell, index) => (index === 0 ? cell : `${block.columns[index]}: ${cell}`)).join(' | '), '  ')}`,
        ),
      ].join('\n');
  }
}

/** The plain-text part of a message, in lines of at most 76 characters where words allow. */
export const renderText = (body: MessageBody): string => `${body.blocks.map(blockText).join('\n\n')}\n`;
