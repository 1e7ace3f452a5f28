import { escapeXml } from '../drawing/svg-element.ts';
import type { BodyBlock, MessageBody } from './message-body.ts';
import type { MessagePicture } from './message-facts.ts';
import { LINKS_STYLE, LINKS_STYLE_DARK, linksHtml } from './message-links.ts';

const STYLE = `
body{margin:0;padding:0;background:#f3f1ec;color:#22262b;font:16px/1.5 -apple-system,"Segoe UI",Roboto,Helvetica,Arial,sans-serif}
.sheet{max-width:600px;margin:0 auto;padding:20px 18px;background:#fff;box-sizing:border-box}
h2{font-size:17px;line-height:1.3;margin:24px 0 6px}
p{margin:0 0 10px}
.answer{border-left:4px solid #2b5876;padding:2px 0 2px 14px;margin:0 0 18px}
.answer p{font-size:18px;line-height:1.4}
.answer .title{font-size:14px;color:#5a636d;margin:0}
img{display:block;width:100%;max-width:560px;height:auto;background:#fff;color:#22262b;border:0}
.scroll{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-size:14px}
.wide{min-width:480px}
caption{text-align:left;font-weight:600;padding:10px 0 4px}
th,td{text-align:left;vertical-align:top;padding:5px 8px 5px 0;border-bottom:1px solid #d8d5cd}
ul{margin:0 0 10px;padding-left:20px}
.small{font-size:13px;color:#5a636d}
${LINKS_STYLE}
@media (prefers-color-scheme:dark){
body{background:#14171a;color:#e8e6e1}.sheet{background:#1d2125}
.answer{border-left-color:#8fb8d8}.answer .title,.small{color:#a9b1b9}th,td{border-bottom-color:#3a4046}
${LINKS_STYLE_DARK}
}
@media (max-width:480px){table{font-size:13px}th,td{overflow-wrap:break-word;padding-right:6px}}`;

/** A table of more columns than this keeps its width on a phone and scrolls. */
const WIDE_FROM = 4;

/** How a picture is pointed to: by its content id in a mail, or as data where a letter is printed. */
export type PictureSource = (picture: MessagePicture) => string;

const paragraph = (text: string, className?: string): string =>
  `<p${className ? ` class="${className}"` : ''}>${escapeXml(text)}</p>`;

function blockHtml(block: BodyBlock, source: PictureSource): string {
  switch (block.kind) {
    case 'heading':
      return `<h2>${escapeXml(block.text)}</h2>`;
    case 'paragraph':
      return paragraph(block.text);
    case 'small':
      return paragraph(block.text, 'small');
    case 'answer':
      return `<div class="answer">${block.lines.map((line) => paragraph(line)).join('')}${paragraph(block.title, 'title')}</div>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${escapeXml(item)}</li>`).join('')}</ul>`;
    case 'picture':
      return `<p><img src="${escapeXml(source(block.picture))}" width="${block.picture.widthPx}" alt="${escapeXml(block.picture.alt)}"></p>`;
    case 'links':
      return linksHtml(block);
    case 'table': {
      const head = block.columns.map((column) => `<th scope="col">${escapeXml(column)}</th>`).join('');
      const rows = block.rows
        .map((row) => `<tr>${row.map((cell) => `<td>${escapeXml(cell)}</td>`).join('')}</tr>`)
        .join('\n');
      return `<div class="scroll" tabindex="0" role="region" aria-label="${escapeXml(block.caption)}"><table${block.columns.length > WIDE_FROM ? ' class="wide"' : ''}><caption>${escapeXml(block.caption)}</caption><thead><tr>${head}</tr></thead><tbody>\n${rows}\n</tbody></table></div>`;
    }
  }
}

/**
 * The HTML of a message: one narrow column that reads with pictures off, at a phone's width, in light and in dark.
 * Every text is escaped.
 */
export function renderHtml(body: MessageBody, source: PictureSource): string {
  return `<!doctype html>
<html lang="${body.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<meta name="color-scheme" content="light dark"><meta name="supported-color-schemes" content="light dark">
<title>${escapeXml(body.title)}</title><style>${STYLE}</style></head>
<body><div class="sheet">
${body.blocks.map((block) => blockHtml(block, source)).join('\n')}
</div></body></html>
`;
}
