import { isWaiting, readImportDraft } from '../register/import-draft-store.ts';
import { type LearnedAct, type LearnedVersion, learnedInForce } from '../register/learned-store.ts';
import { isoUtc } from './clock.ts';
import { type DraftImport, importDraft } from './import-files.ts';
import { type ImportLook, lookAtImport, refusedRowsOf } from './import-look.ts';
import {
  type Acceptance,
  acceptLearning,
  learnFromRegister,
  planLearning,
  type RefusedAcceptance,
  type RegisterLearning,
  revertLearning,
} from './learn-register.ts';
import { type OwnerMoneyResult, ownerMoney } from './owner-money.ts';
import { type LearnedPreview, previewLearned } from './preview-learned.ts';
import { loadPlan, type PlanRequest, type PlanResult } from './report/plan-report-of.ts';
import type { TaskContext } from './task-context.ts';
import { USUAL_MONEY_TERMS } from './usual-money-terms.ts';

const waitingDraft = async ({ register, now }: TaskContext, id: string) => {
  const draft = await readImportDraft(register.db, id, isoUtc(now()));
  return draft && isWaiting(draft) ? draft : null;
};

/** What another version of what was learned would change, or why none can come. */
export type LearnedLook =
  | {
      readonly kind: 'preview';
      /** The version that would be in force; null for the published values. */
      readonly after: LearnedVersion | null;
      /** Number of the version that would be taken back; null where one is accepted. */
      readonly reverts: number | null;
      readonly preview: LearnedPreview;
    }
  | { readonly kind: 'refused'; readonly refused: RefusedAcceptance; readonly learning: RegisterLearning }
  | { readonly kind: 'nothing in force'; readonly learning: RegisterLearning };

/** What came of accepting or taking back. */
export type LearnedDone =
  | { readonly kind: 'accepted' | 'reverted'; readonly number: number }
  | {
      readonly kind: 'refused';
      readonly refused: Exclude<Acceptance, { readonly kind: 'accepted' }>;
      readonly learning: RegisterLearning;
    }
  | { readonly kind: 'another in force'; readonly learning: RegisterLearning };

/**
 * What takes so long in a large register that it is done beside the pages, by name: what it is given and what it gives are plain, so
 * that they can go from one thread to the other.
 */
export const LONG_TASKS = {
  /** What the files of a draft would do; null where they are gone. */
  'look at import': async (
    context: TaskContext,
    { draftId }: { readonly draftId: string },
  ): Promise<ImportLook | null> => {
    const draft = await waitingDraft(context, draftId);
    return draft && lookAtImport(context, draft.files);
  },
  import: async (
    context: TaskContext,
    asked: { readonly draftId: string; readonly by: string; readonly shown: string; readonly leaveRefusedOut: boolean },
  ): Promise<DraftImport | { readonly kind: 'gone' }> => {
    const draft = await waitingDraft(context, asked.draftId);
    return draft ? importDraft(context, draft, asked) : { kind: 'gone' };
  },
  /** The refused rows of one of a draft's files as a file; null where there are none. */
  'refused rows': async (
    context: TaskContext,
    { draftId, index }: { readonly draftId: string; readonly index: number },
  ): Promise<{ readonly name: string; readonly text: string } | null> => {
    const draft = await waitingDraft(context, draftId);
    return draft && refusedRowsOf(context, draft.files, index);
  },
  /** The plan of an owner's or a site's fences. */
  'plan money': async ({ register, now }: TaskContext, request: PlanRequest): Promise<PlanResult> =>
    loadPlan({ register, now }, request),
  /** The plan of an owner's fences by the usual terms. */
  'plan money of owner': async (
    { register, now, onProgress }: TaskContext,
    { ownerRef }: { readonly ownerRef: string },
  ): Promise<OwnerMoneyResult> => ownerMoney(register, { ...USUAL_MONEY_TERMS, ownerRef, now, onProgress }),
  learn: async ({ register, onProgress }: TaskContext): Promise<RegisterLearning> =>
    learnFromRegister(register, onProgress),
  'look at accepting': async (
    { register, now, onProgress }: TaskContext,
    { act, only }: { readonly act: LearnedAct; readonly only: readonly string[] },
  ): Promise<LearnedLook> => {
    const { learning, plan } = await planLearning(register, act, only, onProgress);
    if (plan.kind !== 'planned') return { kind: 'refused', refused: plan, learning };
    const preview = await previewLearned(register, plan.version, now, onProgress);
    return { kind: 'preview', after: plan.version, reverts: null, preview };
  },
  'look at reverting': async ({ register, now, onProgress }: TaskContext): Promise<LearnedLook> => {
    const inForce = await learnedInForce(register.db);
    if (!inForce) return { kind: 'nothing in force', learning: await learnFromRegister(register, onProgress) };
    const after = await learnedInForce(register.db, inForce.number);
    const preview = await previewLearned(register, after, now, onProgress);
    return { kind: 'preview', after, reverts: inForce.number, preview };
  },
  accept: async (
    { register, onProgress }: TaskContext,
    { act, only }: { readonly act: LearnedAct; readonly only: readonly string[] },
  ): Promise<LearnedDone> => {
    const { learning, acceptance } = await acceptLearning(register, act, only, onProgress);
    return acceptance.kind === 'accepted'
      ? { kind: 'accepted', number: acceptance.version.number }
      : { kind: 'refused', refused: acceptance, learning };
  },
  /** Takes the version of that number back, if it is the one in force. */
  revert: async (
    { register, onProgress }: TaskContext,
    { act, number }: { readonly act: LearnedAct; readonly number: number },
  ): Promise<LearnedDone> => {
    const inForce = await learnedInForce(register.db);
    if (inForce?.number !== number) {
      return { kind: 'another in force', learning: await learnFromRegister(register, onProgress) };
    }
    await revertLearning(register, act);
    return { kind: 'reverted', number };
  },
} as const;

/** The name of a task. */
export type TaskName = keyof typeof LONG_TASKS;
/** What a task is asked; null where it needs nothing. */
export type TaskInput<N extends TaskName> =
  Parameters<(typeof LONG_TASKS)[N]> extends [TaskContext, infer Asked] ? Asked : null;
/** What a task gives. */
export type TaskOutput<N extends TaskName> = Awaited<ReturnType<(typeof LONG_TASKS)[N]>>;
