import { Hono } from 'hono';
import { fenceStates, stateOn } from '../../forecast/fence-state.ts';
import type { RowCells } from '../../register/csv/record-cells.ts';
import { loadFenceFacts } from '../../register/fence-facts-store.ts';
import { readRecord } from '../../register/record-store.ts';
import { dayInZone } from '../../service/clock.ts';
import { enterRows } from '../../service/edit-record.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { type SentForm, textField } from '../frame/text-field.ts';
import { NO_FENCE } from './evidence-routes.tsx';
import { type InspectFault, InspectPage } from './inspect-page.tsx';
import { entryFault, isEmpty, type ReadingEntry, readingCells, sentReadings } from './reading-rows.ts';

/** Posts of one form. */
const MOST_POSTS = 40;
const FIRST_ROW_LINE = 2;
const COLUMNS = ['day', 'inspector', 'method', 'qualification', 'instrument', 'ref', 'notes'] as const;

const sentInspection = (form: SentForm): RowCells =>
  Object.fromEntries(COLUMNS.map((column) => [column, textField(form, column).replace(/\r\n?/g, '\n').trim()]));

const KNOWN =
  'there is an inspection of that ref already, or a reading of one of these posts in it; give this one a ref of its own';

/** The form by which the office enters an inspection. */
export function inspectRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  const fenceAsked = async (context: PageContext) => {
    const ref = context.req.param('ref') ?? '';
    const fence = await readRecord(db, 'fences', ref);
    const site = fence && (await readRecord(db, 'sites', fence.siteRef));
    const facts = (await loadFenceFacts(register, [ref])).get(ref);
    if (!fence || !site || !facts) return null;
    const today = dayInZone(clock(), site.timeZone);
    const posts = stateOn(fenceStates(facts), today)
      .posts.map(({ number }) => number)
      .toSorted((a, b) => a - b);
    const from = Number(context.req.query('from') ?? '1');
    const shown = posts.filter((post) => post >= from).slice(0, MOST_POSTS);
    return { fence, site, today, posts, shown: shown.length === 0 ? posts.slice(0, MOST_POSTS) : shown };
  };
  type Asked = NonNullable<Awaited<ReturnType<typeof fenceAsked>>>;

  const show = (
    context: PageContext,
    { fence, site, posts, shown }: Asked,
    form: {
      readonly cells: RowCells;
      readonly entries: readonly ReadingEntry[];
      readonly faults: readonly InspectFault[];
      readonly asked: boolean;
    },
  ) =>
    context.html(
      <InspectPage
        {...form}
        frame={frameFor(context)}
        formToken={formToken(context)}
        fenceRef={fence.ref}
        place={`${site.name}, ${site.place}`}
        units={site.units}
        postCount={posts.length}
        from={shown[0] ?? 1}
        most={MOST_POSTS}
      />,
      form.faults.length > 0 ? 400 : 200,
    );

  app.get('/fences/:ref/inspect', async (context) => {
    const asked = await fenceAsked(context);
    if (!asked) return sayProblem(context, NO_FENCE);
    const entries = sentReadings({}, asked.shown);
    return show(context, asked, { cells: { day: asked.today }, entries, faults: [], asked: false });
  });

  app.post('/fences/:ref/inspect', async (context) => {
    const asked = await fenceAsked(context);
    if (!asked) return sayProblem(context, NO_FENCE);
    const form = await context.req.parseBody();
    const cells = sentInspection(form);
    const entries = sentReadings(form, asked.shown);
    const filled = entries.filter((entry) => !isEmpty(entry));
    const own = filled.flatMap((entry): readonly InspectFault[] => {
      const reason = entryFault(entry);
      return reason === null ? [] : [{ post: entry.post, field: '', reason }];
    });
    if (own.length > 0) return show(context, asked, { cells, entries, faults: own, asked: false });
    const by = accountName(context.var);
    const sure = textField(form, 'confirmed') === 'yes';
    const { fence, site } = asked;
    const ref = cells.ref || `${fence.ref}/${cells.day}/${cells.method}`;
    let known = false;
    const report = await enterRows(
      register,
      [
        { kind: 'inspections', rows: [{ ...cells, ref, fence: fence.ref }] },
        { kind: 'readings', rows: filled.map((entry) => readingCells(entry, ref, site.units, sure)) },
      ],
      { clock, by, sure },
      {
        onlyIf: ({ replaced }) => {
          known = replaced.inspections.length + replaced.readings.length > 0;
          return !known;
        },
      },
    );
    const faults: InspectFault[] = report.faults.map(({ file, line, column, reason }) =>
      file === 'readings.csv'
        ? { post: filled[line - FIRST_ROW_LINE]?.post ?? null, field: column, reason }
        : { post: null, field: column, reason },
    );
    if (known) faults.push({ post: null, field: 'ref', reason: KNOWN });
    if (faults.length > 0) {
      const questions = report.faults.some(({ question }) => question === true);
      return show(context, asked, { cells, entries, faults, asked: questions });
    }
    log.info({ by, fence: fence.ref, inspection: ref, readings: filled.length }, 'an inspection was entered');
    return context.redirect(`/fences/${encodeURIComponent(fence.ref)}/entries?stored`, 303);
  });
  return app;
}
