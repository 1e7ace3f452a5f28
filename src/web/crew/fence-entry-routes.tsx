import { Hono } from 'hono';
import { receiptOf } from '../../register/entry-receipt-store.ts';
import { photosOfFence } from '../../register/visit-photo-store.ts';
import { visitOfAccount } from '../../service/crew-visit.ts';
import { enterVisitPhoto } from '../../service/enter-visit-photo.ts';
import {
  enterClosedOff,
  enterVisitReading,
  type ReadingAnswer,
  takeBackReading,
  visitInspection,
} from '../../service/enter-visit-reading.ts';
import type { AppParts } from '../../service/service.ts';
import { fenceSheet } from '../../service/visit-sheet.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { type SentForm, textField } from '../frame/text-field.ts';
import { isByScript, type NotTaken, notTaken, takenOrNot, tellScript, whyNotTaken } from './crew-answer.ts';
import { entryOf, methodNamed, postNumbered, readingCells, withoutToken } from './crew-form.ts';
import { fencePath } from './crew-marks.ts';
import { crewAccount, crewVisitor } from './crew-visitor.ts';
import { CREW_WORDS } from './crew-words-of.ts';
import { FenceEntryPage } from './fence-entry-page.tsx';
import type { RefusedReading } from './post-section.tsx';
import { sayNotTaken } from './visit-routes.tsx';

const FENCE = '/today/visits/:uid/fences/:ref';

/** Longest text that a phone's moment is taken from. */
const MOMENT_SHAPE = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/;

/** What a post's form says before its fields are read. */
interface PostForm {
  readonly uid: string;
  readonly fenceRef: string;
  readonly post: number;
  readonly entryId: string;
  readonly day: string | null;
  readonly sent: unknown;
}

/** A fence of a visit, entered post by post. */
export function fenceEntryRoutes({ register, clock }: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();

  /** What came of the entry that the address names, for whoever is led back after a form. */
  const toldOf = async (context: PageContext, accountId: number) => {
    const id = context.req.query('saved');
    const receipt = id === undefined ? null : await receiptOf(register.db, `account:${accountId}`, id);
    if (!receipt) return null;
    const answer = receipt.answer as Partial<ReadingAnswer>;
    return { post: answer.post ?? null, doubts: answer.doubts ?? [] };
  };

  const page = async (context: PageContext, uid: string, fenceRef: string, refused: RefusedReading | null) => {
    const visitor = crewVisitor(context);
    const words = CREW_WORDS[visitor.account.language];
    const found = await visitOfAccount(register.db, uid, visitor.account);
    if ('refused' in found) return sayNotTaken(context, whyNotTaken(found.refused, words));
    const sheet = await fenceSheet(register, found.visit, fenceRef, clock);
    if (!sheet) return sayNotTaken(context, whyNotTaken({ kind: 'fence not on it', fenceRef }, words));
    const so = await visitInspection(register, uid, fenceRef);
    const asked = methodNamed(context.req.query('method') ?? (refused ? textField(refused.form, 'method') : ''));
    const html = (
      <FenceEntryPage
        visitor={visitor}
        visit={found.visit}
        fenceRef={fenceRef}
        sheet={sheet}
        readings={new Map((so?.readings ?? []).map((reading) => [reading.post, reading]))}
        // what was only closed off was looked at by nobody's method yet
        method={asked ?? (so && so.method !== 'eye' ? so.method : null)}
        photos={await photosOfFence(register.db, fenceRef, uid)}
        refused={refused}
        told={await toldOf(context, visitor.account.id)}
      />
    );
    return context.html(html, refused ? 422 : 200);
  };

  app.get(FENCE, (context) => page(context, context.req.param('uid'), context.req.param('ref'), null));

  /** Reads a post's form, enters it, and tells what came of it. */
  const entered = async (
    context: PageContext,
    enter: (form: SentForm, place: PostForm) => Promise<Parameters<typeof takenOrNot<ReadingAnswer>>[0]>,
  ): Promise<Response> => {
    const { uid = '', ref: fenceRef = '', post: posted = '' } = context.req.param() as Record<string, string>;
    const words = CREW_WORDS[crewAccount(context).language];
    const form = await context.req.parseBody();
    const entry = entryOf(form);
    const post = postNumbered(posted);
    const taken =
      entry === null || post === null
        ? notTaken(422, words.refusal.badForm)
        : takenOrNot(await enter(form, { ...entry, uid, fenceRef, post, sent: withoutToken(form) }), words);
    if (isByScript(context)) return tellScript(context, taken);
    if ('answer' in taken && entry) {
      const method = methodNamed(textField(form, 'method'));
      const query = new URLSearchParams({ ...(method ? { method } : {}), saved: entry.entryId });
      return context.redirect(`${fencePath(uid, fenceRef)}?${query.toString()}#post-${post}`, 303);
    }
    const { reasons, question } = taken as NotTaken;
    return page(context, uid, fenceRef, { form, reasons, question, post: post ?? 0 });
  };

  app.post(`${FENCE}/posts/:post/reading`, (context) =>
    entered(context, (form, place) => {
      const account = crewAccount(context);
      const cells = (units: 'us' | 'metric') => readingCells(form, { units, language: account.language });
      const method = methodNamed(textField(form, 'method'));
      const sure = textField(form, 'sure') === 'yes';
      return enterVisitReading(register, { ...place, method, cells, sure, account }, clock);
    }),
  );

  app.post(`${FENCE}/posts/:post/closed-off`, (context) =>
    entered(context, (form, place) => {
      const closedOff = textField(form, 'closed_off') !== 'no';
      return enterClosedOff(register, { ...place, closedOff, account: crewAccount(context) }, clock);
    }),
  );

  app.post(`${FENCE}/posts/:post/taken-back`, (context) =>
    entered(context, (_, { entryId, uid, fenceRef, post, sent }) =>
      takeBackReading(register, { entryId, uid, fenceRef, post, sent, account: crewAccount(context) }, clock),
    ),
  );

  app.post(`${FENCE}/photos`, async (context) => {
    const { uid, ref: fenceRef } = context.req.param();
    const account = crewAccount(context);
    const words = CREW_WORDS[account.language];
    const form = await context.req.parseBody();
    const entry = entryOf(form);
    const file = form.photo;
    const posted = textField(form, 'post');
    const takenAt = textField(form, 'taken_at');
    const enter = async () => {
      if (!entry || !(file instanceof File)) return notTaken(422, words.refusal.badForm);
      const bytes = new Uint8Array(await file.arrayBuffer());
      const photo = {
        entryId: entry.entryId,
        uid,
        fenceRef,
        post: posted === '' ? null : postNumbered(posted),
        takenAt: MOMENT_SHAPE.test(takenAt) ? takenAt : null,
        bytes,
        account,
      };
      return takenOrNot(await enterVisitPhoto(register, photo, clock), words);
    };
    const taken = await enter();
    if (isByScript(context)) return tellScript(context, taken);
    if (!('answer' in taken)) return sayNotTaken(context, taken);
    const anchor = posted === '' ? '' : `#post-${posted}`;
    return context.redirect(`${fencePath(uid, fenceRef)}${anchor}`, 303);
  });
  return app;
}
