import type { FenceStanding } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import type { Works } from '../forecast/works.ts';
import { MATTER_RULES, type RuledMatter } from '../notify/matter-rules.ts';
import type { JudgedFence, NoticeDraft } from '../notify/matters.ts';
import { dangerousFindings, isStandingMatter } from '../notify/matters.ts';
import { reminderDraft, seasonToRemindOf } from '../notify/pre-season-reminder.ts';
import type { WorksGain } from '../notify/works-gain.ts';
import type { DecidedNotice } from '../register/swept-fence.ts';
import { canonicalJson } from './canonical-json.ts';
import type { FenceToJudge } from './fence-to-judge.ts';

/** A decided notice with what was known when it was decided. */
export function decidedNotice(
  draft: { readonly matter: RuledMatter; readonly occasion: string },
  judged: JudgedFence,
  gain: WorksGain | null,
): DecidedNotice {
  const { forecast } = judged;
  const one = seasonOne(forecast);
  const group = judgedGroup(one);
  const facts = canonicalJson({
    designGustMps: forecast.designGust.gustMps,
    endsStanding: judged.endsStanding,
    findings: dangerousFindings(forecast),
    ...(gain ? { gain } : {}),
    marksCrossed: forecast.marksCrossed,
    modelVersion: forecast.modelVersion,
    onceInYears: group.onceInYears,
    pShort: one.pShort,
    season: one.label,
    shortSeason: forecast.shortSeason,
    snapMps: group.snapMps,
    standing: judged.standing,
  });
  return { ...draft, facts, mayBeHeld: MATTER_RULES[draft.matter].mayBeHeld };
}

/** The reminders that owners who know of the fence are to get today, by owner. */
export function remindersFor(
  { facts, today, owners, introduced, reminding }: FenceToJudge,
  standing: FenceStanding,
): ReadonlyMap<string, NoticeDraft> {
  const season = reminding ? seasonToRemindOf(facts.site.seasonWindow, today, reminding.days) : null;
  const found = new Map<string, NoticeDraft>();
  if (!season || !reminding) return found;
  for (const ownerRef of owners.filter((ref) => introduced.has(ref))) {
    const told = reminding.told.filter((notice) => notice.ownerRef === ownerRef);
    const draft = reminderDraft({ standing, season, today, told });
    if (draft) found.set(ownerRef, draft);
  }
  return found;
}

/** What one owner is to be told of a fence: what was decided, works done, and a reminder where no standing is told anyway. */
export function ownerNotices(parts: {
  readonly decided: readonly NoticeDraft[];
  readonly works: readonly Works[];
  /** Null where no works are to be told. */
  readonly gain: WorksGain | null;
  readonly reminder: NoticeDraft | undefined;
  /** True where the owner has not heard of the fence yet: how it stands is enough. */
  readonly isNew: boolean;
  readonly judged: JudgedFence;
}): readonly DecidedNotice[] {
  const { decided, works, gain, reminder, isNew, judged } = parts;
  const standingTold = decided.some(({ matter }) => isStandingMatter(matter));
  const drafts: readonly NoticeDraft[] = [...decided, ...(reminder && !standingTold ? [reminder] : [])];
  const notices = drafts.map((draft) => decidedNotice(draft, judged, null));
  if (isNew || !gain) return notices;
  const refs = works.map(({ ref }) => ref).sort();
  return [...notices, decidedNotice({ matter: 'works done', occasion: refs.join(', ') }, judged, gain)];
}
