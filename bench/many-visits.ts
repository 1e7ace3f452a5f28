import { sql } from 'kysely';
import type { Register } from '../src/register/database.ts';
import { acceptSeasonPlan } from '../src/service/accept-season-plan.ts';
import { type Clock, isoUtc } from '../src/service/clock.ts';
import { makeSeasonPlan } from '../src/service/make-season-plan.ts';
import { storeSeasonPlan } from '../src/service/store-season-plan.ts';
import { copyRows } from './copied-rows.ts';

/** Copies of each crew. */
const CREWS = 20;
/** Copies of each visit to come, and of each one that is past. */
const TO_COME = 60;
const PAST = 300;
/** Days by which past visits are moved back, so often [d]. */
const SEASON_DAYS = 364;
const SEASONS = 5;
/** Owners' answers, of which a tenth waits for the office. */
const ANSWERS = 5_000;

/** Plans the season of the small register's fences and accepts the plan: its visits are those to be copied. */
export async function fewVisits(register: Register, now: Clock): Promise<void> {
  const made = await makeSeasonPlan(register, { now, weeks: null, onProgress: () => undefined });
  const { number } = await storeSeasonPlan(register, made, { now, store: true });
  const accepted = await acceptSeasonPlan(register, { number: number!, now, by: 'bench', because: '' });
  if (accepted.kind !== 'accepted') throw new Error(`the plan of the small register: ${accepted.kind}`);
}

/**
 * Copies the visits of the small register: some thousands to come and many that were done in seasons past, by tens of crews; and
 * makes up what owners answered through their links.
 */
export async function manyVisits(
  register: Register,
  { now, fenceCopies, siteCopies }: { readonly now: Clock; readonly fenceCopies: number; readonly siteCopies: number },
): Promise<void> {
  const { db } = register;
  await db.transaction().execute(async (tx) => {
    const inside: Register = { ...register, db: tx };
    const crew = `row.crew_ref || '.' || (1 + copy.n % ${CREWS})`;
    const ref = "row.ref || '.' || copy.n";
    const ofCrew = "row.crew_ref || '.' || copy.n";
    const crews = { copies: CREWS, most: 1_000 };
    await copyRows(inside, 'crews', { ref, name: "row.name || ' ' || copy.n" }, crews);
    await copyRows(inside, 'crew_members', { ref, crew_ref: ofCrew }, crews);
    await copyRows(inside, 'days_off', { ref, crew_ref: ofCrew, member_ref: "row.member_ref || '.' || copy.n" }, crews);
    const uid = { uid: "row.uid || '.' || copy.n" };
    const rounds = [
      { copies: TO_COME, from: 1, past: false },
      { copies: PAST, from: 1_001, past: true },
    ];
    for (const { past, ...round } of rounds) {
      const back = (day: string): string =>
        `date(row.${day}, '-' || ((1 + copy.n % ${SEASONS}) * ${SEASON_DAYS}) || ' days')`;
      const days = past ? { first_day: back('first_day'), last_day: back('last_day') } : {};
      const state = past
        ? { state: "'done'" }
        : { state: "case copy.n % 3 when 0 then 'confirmed' else row.state end" };
      const site = `row.site_ref || '.' || (1 + (copy.n * 7 + row.place) % ${siteCopies})`;
      const most = { ...round, most: 1_000_000 };
      await copyRows(inside, 'visits', { ...uid, ...days, ...state, site_ref: site, crew_ref: crew }, most);
      const fence = `row.fence_ref || '.' || (1 + copy.n % ${fenceCopies})`;
      const item = past ? { state: "'done'" } : {};
      await copyRows(inside, 'visit_items', { ...uid, ...item, fence_ref: fence }, most);
      await copyRows(inside, 'visit_changes', { ...uid, ...days, ...state, crew_ref: crew }, most);
    }
    const at = isoUtc(now());
    await sql`insert into owner_links (owner_ref, scopes, created_at, expires_at)
      select ref, 'see acknowledge', ${at}, ${isoUtc(now().plus({ years: 1 }))} from owners`.execute(tx);
    // of the messages the newest carry links, one each
    await sql`insert into message_links (message_id, purpose, link_id)
      with link as (select id, row_number() over (order by id) as place from owner_links),
        message as (select message_id, row_number() over (order by id) as place from outbox where channel = 'mail')
      select message_id, 'pages', link.id from message join link on link.place = message.place`.execute(tx);
    await sql`insert into owner_answers (owner_ref, link_id, kind, subject, detail, once, at, settled_at)
      with recursive answer(n) as (select 1 union all select n + 1 from answer where n < ${ANSWERS}),
        link as (select id, owner_ref, row_number() over (order by id) as place, count(*) over () as links from owner_links)
      select link.owner_ref, link.id, case n % 10 when 0 then 'call wanted' else 'read' end, 'B-0000001', '{"standing":"short","phone":"","when":"","about":""}', 'made up ' || n, ${at},
        case n % 10 when 0 then null else ${at} end from answer join link on link.place = 1 + n % link.links`.execute(
      tx,
    );
  });
}
