import type { CheckedPost } from '../season/visit/check-list.ts';
import type { DaySheet, SheetFence, SheetStop } from '../season/visit/day-sheet.ts';
import { ownerText } from './calendar-words.ts';
import { cautionsIn } from './cautions.ts';
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

function loadHtml({ load, stops }: DaySheet): string {
  if (load.length === 0) {
    const goesOn = stops.some(({ dayOfVisit }) => dayOfVisit > 1);
    return tag(
      'p',
      goesOn ? 'Nothing to load: what goes on was loaded on its first day.' : 'Nothing to load.',
      'muted',
    );
  }
  const items = load.map(
    ({ name, unit, toTake }) => `<li>${BOX}${tag('b', amountText(toTake, unit))}${tag('span', name)}</li>`,
  );
  return `<ul class="load">${items.join('')}</ul>`;
}

function postRow(post: CheckedPost, units: DisplayUnits): string {
  const bad = conditionText(post);
  const name = (text: string): string => tag('span', `${text} `, 'stacked');
  const works =
    post.todo.length === 0
      ? tag('span', 'look', 'muted')
      : todoTexts(post)
          .map((text) => tag('span', text, 'works'))
          .join('');
  return [
    '<tr>',
    `<td class="tick">${BOX}</td>`,
    `<th scope="row"><b>${post.number}</b>${tag('span', alongText(post.positionM, units))}</th>`,
    `<td class="todo">${works}${bad === '' ? '' : tag('span', bad, 'bad')}</td>`,
    `<td class="read">${name('Last read')}${escapeXml(lastReadText(post, units))}</td>`,
    `<td class="believed">${name(believedHeading(units))}${escapeXml(believedText(post, units))}${widthBar(post)}</td>`,
    `<td class="blank-cell">${name(`Width found, ${depthUnit(units)}`)}${BLANK}</td>`,
    `<td class="blank-cell">${name('Lean, °')}${BLANK}</td>`,
    '</tr>',
  ].join('');
}

const newPostRow = (post: CheckedPost): string =>
  `<tr class="new"><td class="tick">${BOX}</td><th scope="row"><span>after ${post.number}</span></th><td class="todo" colspan="5">${tag('span', `new post, midway between post ${post.number} and the next`, 'works')}</td></tr>`;

function fenceHtml(fence: SheetFence, units: DisplayUnits): string {
  const rows = fence.posts.flatMap((post) => [postRow(post, units), ...(post.newPostAfter ? [newPostRow(post)] : [])]);
  const headings = [
    'Done',
    'Post',
    'To do',
    'Last read',
    believedHeading(units),
    `Sound width found, ${depthUnit(units)}`,
    'Lean, °',
  ];
  return [
    '<section class="fence">',
    tag('h3', `Fence ${fence.ref}`),
    tag('p', visitItemText(fence), 'do'),
    tag('p', fenceText(fence, units), 'muted'),
    ...(fence.accessNote === '' ? [] : [`<p><b>Getting there:</b> ${escapeXml(fence.accessNote)}</p>`]),
    ...(fence.note === '' ? [] : [`<p><b>About it:</b> ${escapeXml(fence.note)}</p>`]),
    ...fence.findings.map((finding) => tag('p', finding, 'word')),
    `<div class="strip" role="group" tabindex="0" aria-label="${escapeXml(`Fence ${fence.ref} from the side`)}">${postStrip(fence.posts, `Fence ${fence.ref} with ${fence.posts.length} posts`)}</div>`,
    tag('p', `${countedFromText(fence, units)} ${postStripKey(fence.posts)}`.trim(), 'small'),
    `<table><colgroup>${COLUMNS.map((name) => `<col class="c-${name}">`).join('')}</colgroup><thead><tr>${headings.map((heading) => `<th scope="col">${escapeXml(heading)}</th>`).join('')}</tr></thead><tbody>`,
    ...rows,
    '</tbody></table>',
    `<div class="ends"><span>${BOX} all done</span><span>People’s hours used (planned ${hours(fence.personHours)}) ${BLANK}</span><span class="remark">Left undone, and why <i></i></span></div>`,
    '</section>',
  ].join('\n');
}

function stopHtml(stop: SheetStop, index: number): string {
  const { site, owners, reminders } = stop;
  const planned = `People’s hours planned: ${hours(stop.personHours)} at the site, ${hours(stop.travelPersonHours)} on the way. Visit ${stop.uid}.`;
  return [
    '<section class="stop">',
    `<div class="stop-head"><span class="turn">${index + 1}</span><div class="what">${tag('h2', site.name)}${tag('p', site.place)}</div>`,
    `<p class="when">${escapeXml(whenText(stop))}${tag('span', stateText(stop))}</p></div>`,
    ...(stop.note === '' ? [] : [tag('p', stop.note, 'word')]),
    ...(reminders.length === 0
      ? []
      : [
          `<ul class="first">${reminders.map((each) => `<li>${BOX}${tag('span', reminderSentence(each))}</li>`).join('')}</ul>`,
        ]),
    `<div class="owners">${owners.map((owner) => `<p><b>Owner of ${escapeXml(owner.fenceRefs.join(', '))}:</b> ${escapeXml(ownerText(owner))}</p>`).join('')}</div>`,
    tag('p', planned, 'small'),
    ...stop.fences.map((fence) => fenceHtml(fence, site.units)),
    '</section>',
  ].join('\n');
}

const sheetHtml = (sheet: DaySheet): string =>
  [
    '<article class="sheet">',
    `<header>${tag('h1', sheet.crew.name)}${tag('p', longDay(sheet.day), 'day')}${tag('p', sheet.people.length === 0 ? 'Nobody of the crew is down to go out this day.' : `Going out: ${sheet.people.join(', ')}`, 'people')}</header>`,
    '<section><h2 class="load-head">Load</h2>',
    loadHtml(sheet),
    '</section>',
    ...sheet.stops.map(stopHtml),
    `<footer class="cautions">${cautionsIn('en')
      .all.map((caution) => tag('p', caution))
      .join('')}</footer>`,
    '</article>',
  ].join('\n');

/** Day sheets as one HTML page that stands alone: each on paper of its own, A4 or Letter, and readable on a phone. */
export const daySheetHtml = (sheets: readonly DaySheet[]): string => `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<title>${escapeXml(`Day sheet: ${sheets.map(({ crew, day }) => `${crew.name}, ${day}`).join('; ')}`)}</title><style>${DAY_SHEET_STYLE}</style></head>
<body><main>
${sheets.map(sheetHtml).join('\n')}
</main></body></html>
`;
