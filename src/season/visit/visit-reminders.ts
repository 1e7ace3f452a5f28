import { addDays, type CalendarDay } from '../../units/calendar-day.ts';
import type { CatalogueKind, CatalogueRules } from '../catalogue-entry.ts';
import type { WorksCatalogue } from '../works-catalogue.ts';
import type { Visit } from './visit.ts';

/** Something to have seen to before the crew begins, with the works that ask for it and the fences they are done at. */
export type VisitReminder = {
  readonly works: readonly CatalogueKind[];
  readonly fenceRefs: readonly string[];
} & (
  | {
      /** Have buried utilities marked. */
      readonly kind: 'locate';
      /** Last day to ask for it. */
      readonly askBy: CalendarDay;
      readonly noticeDays: number;
    }
  /** A permit may be needed; only a licensed applicator may do it; not while the ground is frozen. */
  | { readonly kind: 'permit' | 'licensed-applicator' | 'frozen-ground' }
);

/** The reminders of a visit by the rules of the catalogue, digging first. */
export function visitReminders(
  visit: Pick<Visit, 'items' | 'firstDay'>,
  catalogue: WorksCatalogue,
): readonly VisitReminder[] {
  const all = visit.items.flatMap(({ fenceRef, works }) => works.map(({ kind }) => ({ fenceRef, kind })));
  const asking = (asks: (rules: CatalogueRules) => boolean) => {
    const found = all.filter(({ kind }) => asks(catalogue[kind].rules));
    return {
      works: [...new Set(found.map(({ kind }) => kind))],
      fenceRefs: [...new Set(found.map(({ fenceRef }) => fenceRef))],
    };
  };
  const dug = asking(({ locateNoticeDays }) => locateNoticeDays > 0);
  const noticeDays = Math.max(0, ...dug.works.map((kind) => catalogue[kind].rules.locateNoticeDays));
  const reminders: readonly VisitReminder[] = [
    { kind: 'locate', ...dug, noticeDays, askBy: addDays(visit.firstDay, -noticeDays) },
    { kind: 'permit', ...asking(({ permit }) => permit) },
    { kind: 'licensed-applicator', ...asking(({ licensedApplicator }) => licensedApplicator) },
    { kind: 'frozen-ground', ...asking(({ notOnFrozenGround }) => notOnFrozenGround) },
  ];
  return reminders.filter(({ works }) => works.length > 0);
}
