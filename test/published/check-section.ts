import { ALL_CHECKS } from './all-checks.ts';
import { digits, table } from './page-table.ts';
import { checkOutcome, type PublishedCheck } from './published-check.ts';

const significant = (value: number): number => String(value).replace(/^-?0?\.?0*|\.|e.*$/g, '').length;
const publishedText = (value: number | string): string => (typeof value === 'number' ? digits(value, 9) : value);

function computedText(check: PublishedCheck): string {
  const { computed } = checkOutcome(check);
  if (typeof computed === 'string') return check.detail ? `${computed} (${check.detail()})` : computed;
  const published = typeof check.published === 'number' ? significant(Number(digits(check.published, 9))) : 4;
  const size = Math.max(Math.abs(computed), typeof check.published === 'number' ? Math.abs(check.published) : 0);
  if (Math.abs(computed) < 1e-9 * Math.max(1, size)) return '0';
  return digits(computed, Math.min(10, Math.max(4, published + 1)));
}

function differenceText(check: PublishedCheck): string {
  const { difference } = checkOutcome(check);
  if (difference === null || typeof check.published !== 'number') return '';
  const { published } = check;
  if (Math.abs(difference) < 1e-9 * Math.max(1, Math.abs(published))) return '0';
  if (check.tolerance.kind === 'relative') return `${digits(Number(((100 * difference) / published).toFixed(3)), 2)} %`;
  return digits(difference, 2);
}

const toleranceText = ({ tolerance, published }: PublishedCheck): string => {
  if (typeof published === 'string') return 'equal';
  return tolerance.kind === 'relative' ? `${digits(100 * tolerance.value, 3)} %` : digits(tolerance.value, 3);
};

/** One topic's checks: computed beside published, with tolerance, tag, source and notes. */
function topicSection(topic: string, checks: readonly PublishedCheck[]): string {
  const notes = [...new Set(checks.flatMap((check) => (check.note ? [check.note] : [])))];
  const mark = (check: PublishedCheck): string => (check.note ? ` [${notes.indexOf(check.note) + 1}]` : '');
  const rows = checks.map((check) => [
    check.quantity + mark(check),
    computedText(check),
    publishedText(check.published),
    differenceText(check),
    toleranceText(check),
    check.unit,
    check.tag,
    check.source,
  ]);
  const head = ['quantity', 'computed', 'published', 'difference', 'tolerance', 'unit', 'tag', 'source'];
  const list = notes.map((note, index) => `[${index + 1}] ${note}`).join('\n\n');
  return `### ${topic}\n\n${table(head, rows)}\n${list ? `\n${list}\n` : ''}`;
}

/** Computed beside published for every check, topic by topic. */
export const checkSection = (): string =>
  [...new Set(ALL_CHECKS.map((check) => check.topic))]
    .map((topic) =>
      topicSection(
        topic,
        ALL_CHECKS.filter((check) => check.topic === topic),
      ),
    )
    .join('\n');
