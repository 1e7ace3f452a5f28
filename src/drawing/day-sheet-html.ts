import type { CheckedPost } from '../season/visit/check-list.ts';
import type { DaySheet, SheetFence, SheetStop } from '../season/visit/day-sheet.ts';
import { ownerText } from './calendar-words.ts';
import { cautionsIn } from './cautions.ts';
import type { ChartLanguage } from './chart-words.ts';
import { DAY_SHEET_LABELS } from './day-sheet-labels.ts';
import { DAY_SHEET_STYLE } from './day-sheet-style.ts';
import {
  alongText,
  amountText,
  believedHeading,
  believedText,
  conditionText,
  countedFromText,
  fenceText,
  lastReadText,
  longDay,
  stateText,
  todoTexts,
  whenText,
} from './day-sheet-words.ts';
import { postStrip, postStripKey } from './post-strip.ts';
import { depthUnit } from './quantity-text.ts';
import { remarkInSpanish } from './spanish/forecast-remarks.ts';
import { loadedMaterialIn } from './spanish/material-names.ts';
import type { DisplayUnits } from './speed-text.ts';
import { escapeXml } from './svg-element.ts';
import { reminderSentence, visitItemText } from './visit-words.ts';
import { widthBar } from './width-bar.ts';

const BOX = '<span class="box"></span>';
const BLANK = '<span class="blank"></span>';

/** Columns of the posts, which stand in the same places at every fence. */
const COLUMNS = ['tick', 'post', 'todo', 'read', 'believed', 'found', 'lean'] as const;

const tag = (name: string, text: string, className?: string): string =>
  `<${name}${className === undefined ? '' : ` class="${className}"`}>${escapeXml(text)}</${name}>`;

const hours = (personHours: number): string => String(Number(personHours.toFixed(1)));

function loadHtml({ load, stops }: DaySheet, language: ChartLanguage): string {
  const words = DAY_SHEET_LABELS[language];
  if (load.length === 0) {
    const goesOn = stops.some(({ dayOfVisit }) => dayOfVisit > 1);
    return tag('p', goesOn ? words.loadedBefore : words.nothingToLoad, 'muted');
  }
  const items = load.map(
    ({ name, unit, toTake }) =>
      `<li>${BOX}${tag('b', amountText(toTake, unit, language))}${tag('span', loadedMaterialIn(name, unit, language))}</li>`,
  );
  return `<ul class="load">${items.join('')}</ul>`;
}

interface Told {
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}

function postRow(post: CheckedPost, { units, language }: Told): string {
  const words = DAY_SHEET_LABELS[language];
  const bad = conditionText(post, language);
  const name = (text: string): string => tag('span', `${text} `, 'stacked');
  const works =
    post.todo.length === 0
      ? tag('span', todoTexts(post, language)[0] ?? '', 'muted')
      : todoTexts(post, language)
          .map((text) => tag('span', text, 'works'))
          .join('');
  return [
    '<tr>',
    `<td class="tick">${BOX}</td>`,
    `<th scope="row"><b>${post.number}</b>${tag('span', alongText(post.positionM, units))}</th>`,
    `<td class="todo">${works}${bad === '' ? '' : tag('span', bad, 'bad')}</td>`,
    `<td class="read">${name(words.lastRead)}${escapeXml(lastReadText(post, units, language))}</td>`,
    `<td class="believed">${name(believedHeading(units, language))}${escapeXml(believedText(post, units))}${widthBar(post)}</td>`,
    `<td class="blank-cell">${name(words.widthFound(depthUnit(units)))}${BLANK}</td>`,
    `<td class="blank-cell">${name(words.lean)}${BLANK}</td>`,
    '</tr>',
  ].join('');
}

function newPostRow({ number }: CheckedPost, language: ChartLanguage): string {
  const words = DAY_SHEET_LABELS[language];
  return `<tr class="new"><td class="tick">${BOX}</td><th scope="row"><span>${escapeXml(words.after(number))}</span></th><td class="todo" colspan="5">${tag('span', words.newPostAfter(number), 'works')}</td></tr>`;
}

function fenceHtml(fence: SheetFence, told: Told): string {
  const { units, language } = told;
  const words = DAY_SHEET_LABELS[language];
  const rows = fence.posts.flatMap((post) => [
    postRow(post, told),
    ...(post.newPostAfter ? [newPostRow(post, language)] : []),
  ]);
  const headings = [
    words.done,
    words.post,
    words.todo,
    words.lastRead,
    believedHeading(units, language),
    words.soundWidthFound(depthUnit(units)),
    words.lean,
  ];
  return [
    '<section class="fence">',
    tag('h3', words.fence(fence.ref)),
    tag('p', visitItemText(fence, language), 'do'),
    tag('p', fenceText(fence, units, language), 'muted'),
    ...(fence.accessNote === '' ? [] : [`<p><b>${words.gettingThere}</b> ${escapeXml(fence.accessNote)}</p>`]),
    ...(fence.note === '' ? [] : [`<p><b>${words.aboutIt}</b> ${escapeXml(fence.note)}</p>`]),
    ...fence.findings.map((finding) => tag('p', language === 'es' ? remarkInSpanish(finding) : finding, 'word')),
    `<div class="strip" role="group" tabindex="0" aria-label="${escapeXml(words.fromTheSide(fence.ref))}">${postStrip(fence.posts, words.drawn(fence.ref, fence.posts.length))}</div>`,
    tag('p', `${countedFromText(fence, units, language)} ${postStripKey(fence.posts, language)}`.trim(), 'small'),
    `<table><colgroup>${COLUMNS.map((name) => `<col class="c-${name}">`).join('')}</colgroup><thead><tr>${headings.map((heading) => `<th scope="col">${escapeXml(heading)}</th>`).join('')}</tr></thead><tbody>`,
    ...rows,
    '</tbody></table>',
    `<div class="ends"><span>${BOX} ${words.allDone}</span><span>${words.hoursUsed(hours(fence.personHours))} ${BLANK}</span><span class="remark">${words.leftUndone} <i></i></span></div>`,
    '</section>',
  ].join('\n');
}

function stopHtml(stop: SheetStop, index: number, language: ChartLanguage): string {
  const words = DAY_SHEET_LABELS[language];
  const { site, owners, reminders } = stop;
  const planned = words.hoursPlanned(hours(stop.personHours), hours(stop.travelPersonHours), stop.uid);
  return [
    '<section class="stop">',
    `<div class="stop-head"><span class="turn">${index + 1}</span><div class="what">${tag('h2', site.name)}${tag('p', site.place)}</div>`,
    `<p class="when">${escapeXml(whenText(stop, language))}${tag('span', stateText(stop, language))}</p></div>`,
    ...(stop.note === '' ? [] : [tag('p', stop.note, 'word')]),
    ...(reminders.length === 0
      ? []
      : [
          `<ul class="first">${reminders.map((each) => `<li>${BOX}${tag('span', reminderSentence(each, language))}</li>`).join('')}</ul>`,
        ]),
    `<div class="owners">${owners.map((owner) => `<p><b>${escapeXml(words.ownerOf(owner.fenceRefs.join(', ')))}:</b> ${escapeXml(ownerText(owner))}</p>`).join('')}</div>`,
    tag('p', planned, 'small'),
    ...stop.fences.map((fence) => fenceHtml(fence, { units: site.units, language })),
    '</section>',
  ].join('\n');
}

function sheetHtml(sheet: DaySheet, language: ChartLanguage): string {
  const words = DAY_SHEET_LABELS[language];
  const people = sheet.people.length === 0 ? words.nobody : words.goingOut(sheet.people.join(', '));
  return [
    '<article class="sheet">',
    `<header>${tag('h1', sheet.crew.name)}${tag('p', longDay(sheet.day, language), 'day')}${tag('p', people, 'people')}</header>`,
    `<section><h2 class="load-head">${words.load}</h2>`,
    loadHtml(sheet, language),
    '</section>',
    ...sheet.stops.map((stop, index) => stopHtml(stop, index, language)),
    `<footer class="cautions">${cautionsIn(language)
      .all.map((caution) => tag('p', caution))
      .join('')}</footer>`,
    '</article>',
  ].join('\n');
}

/** Day sheets as one HTML page that stands alone: each on paper of its own, A4 or Letter, and readable on a phone. */
export const daySheetHtml = (sheets: readonly DaySheet[], language: ChartLanguage): string => `<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<title>${escapeXml(DAY_SHEET_LABELS[language].title(sheets.map(({ crew, day }) => `${crew.name}, ${day}`).join('; ')))}</title><style>${DAY_SHEET_STYLE}</style></head>
<body><main>
${sheets.map((sheet) => sheetHtml(sheet, language)).join('\n')}
</main></body></html>
`;
