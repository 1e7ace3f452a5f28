import { escapeXml } from '../svg-element.ts';
import type { Report, ReportBlock, ReportCell, ReportTable } from './report.ts';
import { REPORT_STYLE } from './report-style.ts';

/** Widths at which a page holds a drawing [px]; the style shows the one that has room. */
const DRAWING_WIDTHS = [
  ['wide', 1000],
  ['middle', 680],
  ['narrow', 358],
] as const;

/** Columns that fit on a phone side by side. */
const FEW_COLUMNS = 3;

const tag = (name: string, text: string, className?: string): string =>
  `<${name}${className === undefined ? '' : ` class="${className}"`}>${escapeXml(text)}</${name}>`;

/** A text whose lines stay apart. */
const inLines = (text: string): string => text.split('\n').map(escapeXml).join('<br>');

function cellHtml(cell: ReportCell): string {
  if (typeof cell === 'string') return inLines(cell);
  switch (cell.kind) {
    case 'text': {
      const text = cell.strong ? `<b>${inLines(cell.text)}</b>` : inLines(cell.text);
      return cell.under === undefined || cell.under === ''
        ? text
        : `${text}<span class="small">${inLines(cell.under)}</span>`;
    }
    case 'tick':
      return '<span class="report-box"></span>';
    case 'blank':
      return '<span class="report-blank"></span>';
    case 'drawn':
      return `${inLines(cell.text)}${cell.svg}`;
  }
}

function tableHtml({ caption, columns, rows, sums = [] }: ReportTable): string {
  const figure = (index: number): string => (columns[index]?.figures ? ' class="figure"' : '');
  const heads = columns.map(
    ({ heading, unit }, index) =>
      `<th scope="col"${figure(index)}>${escapeXml(heading)}${unit === undefined || unit === '' ? '' : `<span class="unit">${escapeXml(unit)}</span>`}</th>`,
  );
  const row = (cells: readonly ReportCell[]): string =>
    `<tr>${cells
      .map((cell, index) =>
        index === 0
          ? `<th scope="row"${figure(0)}>${cellHtml(cell)}</th>`
          : `<td${figure(index)}>${cellHtml(cell)}</td>`,
      )
      .join('')}</tr>`;
  const foot = sums.length === 0 ? '' : `<tfoot>${sums.map(row).join('\n')}</tfoot>`;
  return [
    `<div class="scroll" role="region" tabindex="0" aria-label="${escapeXml(caption)}"><table class="report-table${columns.length <= FEW_COLUMNS ? ' few' : ''}">`,
    `${tag('caption', caption)}<thead><tr>${heads.join('')}</tr></thead>`,
    `<tbody>${rows.map(row).join('\n')}</tbody>${foot}`,
    '</table></div>',
  ].join('\n');
}

/** One part of a report as HTML; the prefix tells the ids inside apart where a page holds several. */
export function partHtml(block: ReportBlock, idPrefix: string): string {
  switch (block.kind) {
    case 'heading':
      return tag(`h${block.level}`, block.text);
    case 'paragraph':
      return tag('p', block.text, block.look === undefined ? undefined : PARAGRAPH_CLASSES[block.look]);
    case 'answer':
      return `<div class="report-answer">${block.lines.map((line) => tag('p', line)).join('')}${tag('p', block.about, 'about')}</div>`;
    case 'facts':
      return `<dl class="facts">${block.facts
        .map(
          ({ name, value, small }) =>
            `<div>${tag('dt', name)}<dd>${inLines(value)}${small === undefined || small === '' ? '' : `<span class="small">${inLines(small)}</span>`}</dd></div>`,
        )
        .join('')}</dl>`;
    case 'list':
      return `<ul class="${block.ticks ? 'report-ticks' : 'plain'}">${block.items
        .map((item) => `<li>${block.ticks ? '<span class="report-box"></span>' : ''}${tag('span', item)}</li>`)
        .join('')}</ul>`;
    case 'table':
      return tableHtml(block);
    case 'drawing':
      return `<figure class="report-drawing">${DRAWING_WIDTHS.map(
        ([name, widthPx]) => `<div class="report-${name}">${block.svg(widthPx, `${idPrefix}-${name}`)}</div>`,
      ).join('')}${block.caption === undefined ? '' : tag('figcaption', block.caption)}</figure>`;
    case 'picture':
      return `<p><img class="report-picture" src="${escapeXml(block.source)}" width="${block.widthPx}" alt="${escapeXml(block.alt)}"></p>`;
    case 'lines':
      return `<div class="report-lines">${block.labels.map((label) => `<p>${tag('span', label)}<i></i></p>`).join('')}</div>`;
    case 'cautions':
      return `<section class="report-cautions">${tag('h2', block.heading)}${block.items.map((item) => tag('p', item)).join('')}</section>`;
    case 'new page':
      return '<hr class="report-new-page">';
  }
}

const PARAGRAPH_CLASSES = { lead: 'lead', small: 'report-small', strong: 'report-strong' } as const;

/** A report as the inside of a page: its title, what is under it, its parts, and the foot that paper has on every sheet. */
export function reportBody(report: Report): string {
  return [
    `<article class="report" lang="${report.language}">`,
    tag('h1', report.title),
    ...report.under.map((line) => tag('p', line, 'where')),
    ...report.blocks.map((block, index) => partHtml(block, `r${index}`)),
    tag('p', report.foot.join(' · '), 'report-foot'),
    '</article>',
  ].join('\n');
}

/** A report as one HTML page that stands alone, with its styles inside: to read on any screen, to print on Letter or A4. */
export const reportHtml = (report: Report): string => `<!doctype html>
<html lang="${report.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<meta name="author" content="${escapeXml(report.author)}"><meta name="description" content="${escapeXml(report.subject)}">
<title>${escapeXml(report.title)}</title><style>${REPORT_STYLE}</style></head>
<body class="report-alone"><main>
${reportBody(report)}
</main></body></html>
`;
