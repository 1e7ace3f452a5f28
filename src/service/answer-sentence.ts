import { MATTER_GROUP_WORDS, type MatterGroup } from '../notify/matter-groups.ts';
import type { NamedDayWish } from '../register/day-wish-store.ts';
import type { OwnerAnswer } from '../register/owner-answer-store.ts';
import type { Money } from '../season/money/money.ts';
import { moneyText } from '../season/money/money.ts';
import type { CallWish } from './owner-answers.ts';

interface WishesKept {
  readonly muted: readonly MatterGroup[];
  readonly pausedUntil: string | null;
  readonly language: string;
}

/** Characters of a hash that tell it from others at a glance. */
const SHORT_HASH = 12;

const names = (groups: readonly MatterGroup[]): string =>
  groups.map((group) => MATTER_GROUP_WORDS.en[group].split(/[:,]/)[0] ?? group).join('; ');

/** What changed between two states of what an owner wants, as clauses. */
function changes(before: WishesKept, after: WishesKept): readonly string[] {
  const off = after.muted.filter((group) => !before.muted.includes(group));
  const on = before.muted.filter((group) => !after.muted.includes(group));
  return [
    ...(off.includes('danger') ? ['NEWS OF DANGER TURNED OFF'] : []),
    ...(off.some((group) => group !== 'danger')
      ? [`no longer wants: ${names(off.filter((group) => group !== 'danger'))}`]
      : []),
    ...(on.length > 0 ? [`wants again: ${names(on)}`] : []),
    ...(before.pausedUntil === after.pausedUntil
      ? []
      : [after.pausedUntil === null ? 'no pause any more' : `nothing but danger until ${after.pausedUntil}`]),
    ...(before.language === after.language ? [] : [`language: ${after.language === 'es' ? 'Spanish' : 'English'}`]),
  ];
}

/** What an owner answered, as the office reads it. */
export function answerSentence({ kind, subject, detail }: Pick<OwnerAnswer, 'kind' | 'subject' | 'detail'>): string {
  const said: unknown = JSON.parse(detail);
  switch (kind) {
    case 'read':
      return `has read that fence ${subject} is ${(said as { readonly standing: string }).standing}`;
    case 'day chosen': {
      const { day, proposed, siteRef } = said as {
        readonly day: string;
        readonly proposed: string;
        readonly siteRef: string;
      };
      return `chose ${day} for visit ${subject} at ${siteRef}${day === proposed ? ', the day proposed' : `, proposed for ${proposed}`}`;
    }
    case 'quote accepted': {
      const { total, currency, name, sha256 } = said as {
        readonly total: Money;
        readonly currency: string;
        readonly name: string;
        readonly sha256: string;
      };
      return `accepted quote ${subject} of ${moneyText(total)} ${currency}, signed ${JSON.stringify(name)} (SHA-256 ${sha256.slice(0, SHORT_HASH)}…)`;
    }
    case 'call wanted': {
      const { phone, when, about } = said as CallWish;
      const parts = [phone && `number ${phone}`, when && `when: ${when}`, about && `about: ${about}`].filter(Boolean);
      return `wants a call${parts.length > 0 ? `; ${parts.join('; ')}` : ''}`;
    }
    case 'unsubscribed':
      return 'stopped all mails but news of danger';
    case 'preferences': {
      const { before, after } = said as { readonly before: WishesKept; readonly after: WishesKept };
      return changes(before, after).join('; ');
    }
  }
}

/** What an owner marked of the days of a visit to the fences of several owners, as the office reads it. */
export function markSentence({
  visitUid,
  siteRef,
  suits,
}: Pick<NamedDayWish, 'visitUid' | 'siteRef' | 'suits'>): string {
  const which =
    suits.length === 0 ? 'said that none of the days offered suits' : `marked ${suits.join(', ')} to begin on`;
  return `${which}, for visit ${visitUid} at ${siteRef}`;
}
