import { Hono } from 'hono';
import { loadFenceEvidence } from '../../register/evidence-store.ts';
import { listWithdrawals, withdrawInspection, withdrawOutcomes } from '../../register/evidence-withdrawal.ts';
import { readRecord, recordsWhereIn } from '../../register/record-store.ts';
import { dayInZone, isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import { spreadingOutcome } from '../../service/withdraw-evidence.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { textField } from '../frame/text-field.ts';
import { EvidencePage, type EvidencePageProps } from './evidence-page.tsx';

const LONGEST_REASON = 2000;
const LONGEST_REF = 40;

export const NO_FENCE: Problem = {
  status: 404,
  title: 'No such fence',
  what: 'The register has no fence of that ref.',
  wayOut: 'Refs are compared letter by letter, capitals too. The list of fences has a field to look for one.',
};

/** What was seen and done at a fence: looked at, corrected, taken back. */
export function evidenceRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  const show = async (context: PageContext, problem: EvidencePageProps['problem'] = null) => {
    const ref = context.req.param('ref') ?? '';
    const fence = await readRecord(db, 'fences', ref);
    const site = fence && (await readRecord(db, 'sites', fence.siteRef));
    if (!fence || !site) return sayProblem(context, NO_FENCE);
    const [evidence, works, inspections, outcomes] = await Promise.all([
      loadFenceEvidence(db, [ref]),
      recordsWhereIn(db, 'works', 'fence_ref', [ref]),
      listWithdrawals(db, ref, 'inspection'),
      listWithdrawals(db, ref, 'outcome'),
    ]);
    const query = context.req.query();
    const done =
      'stored' in query
        ? 'Stored. The next sweep takes it in.'
        : 'withdrawn' in query
          ? 'Taken back. The next sweep leaves it out.'
          : null;
    return context.html(
      <EvidencePage
        frame={frameFor(context)}
        formToken={formToken(context)}
        fenceRef={ref}
        place={`${site.name}, ${site.place}`}
        units={site.units}
        evidence={evidence.get(ref) ?? { inspections: [], outcomes: [] }}
        works={works.toSorted((a, b) => (a.day < b.day ? -1 : 1))}
        withdrawals={[...inspections, ...outcomes]}
        problem={problem}
        done={done}
      />,
      problem === null ? 200 : 400,
    );
  };

  app.get('/fences/:ref/entries', (context) => show(context));

  app.post('/fences/:ref/withdraw', async (context) => {
    const fenceRef = context.req.param('ref');
    if (!(await readRecord(db, 'fences', fenceRef))) return sayProblem(context, NO_FENCE);
    const form = await context.req.parseBody();
    const [kind, ref, because] = ['kind', 'ref', 'because'].map((name) => textField(form, name).trim());
    const refuse = (text: string, asked = false) =>
      show(context, { ref: ref ?? '', text: `Nothing was taken back: ${text}.`, asked, because: because ?? '' });
    if (!ref || !because || because.length > LONGEST_REASON) {
      return refuse(`say why, in 1 to ${LONGEST_REASON} characters`);
    }
    const act = { because, by: accountName(context.var), at: isoUtc(clock()) };
    if (kind === 'inspections') {
      const known = await readRecord(db, 'inspections', ref);
      if (known?.fenceRef !== fenceRef) return refuse('it is not there any more');
      await withdrawInspection(register, ref, act);
    } else {
      const known = await readRecord(db, 'outcomes', ref);
      if (known?.fenceRef !== fenceRef) return refuse('it is not there any more');
      const spreading = textField(form, 'confirmed') === 'yes' ? null : await spreadingOutcome(register, [known]);
      if (spreading !== null) return refuse(spreading, true);
      await withdrawOutcomes(register, [known], act);
    }
    log.info({ by: act.by, kind, ref, because }, 'evidence was taken back');
    return context.redirect(`/fences/${encodeURIComponent(fenceRef)}/entries?withdrawn`, 303);
  });

  app.get('/fences/:ref/works', async (context) => {
    const fence = await readRecord(db, 'fences', context.req.param('ref'));
    const site = fence && (await readRecord(db, 'sites', fence.siteRef));
    if (!fence || !site) return sayProblem(context, NO_FENCE);
    const day = dayInZone(clock(), site.timeZone);
    const query = new URLSearchParams({ ref: `${fence.ref}.${day}`.slice(-LONGEST_REF), fence: fence.ref, day });
    return context.redirect(`/records/works/new?${query.toString()}`, 303);
  });

  app.get('/fences/:ref/edit', (context) =>
    context.redirect(`/records/fences/${encodeURIComponent(context.req.param('ref'))}/edit`, 303),
  );
  return app;
}
