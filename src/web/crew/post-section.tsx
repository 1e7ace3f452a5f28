import type { FC } from 'hono/jsx';
import { alongText } from '../../drawing/day-sheet-words.ts';
import { bandText, depthFigure, depthUnit } from '../../drawing/quantity-text.ts';
import type { InspectionMethod } from '../../forecast/evidence/inspection.ts';
import { type ReadingRecord, readingFacts } from '../../register/reading-record.ts';
import type { VisitPhoto } from '../../register/visit-photo-store.ts';
import type { CheckedPost } from '../../season/visit/check-list.ts';
import { FormAlert } from '../frame/form-field.tsx';
import { type CrewVisitor, EntryForm } from './crew-frame.tsx';
import type { CrewWords } from './crew-words.ts';
import { CREW_WORDS } from './crew-words-of.ts';
import { PhotoForm, PhotoList } from './photo-parts.tsx';
import { PostForm } from './post-form.tsx';
import { readingWords, smallText } from './reading-words.ts';
import type { RefusedForm } from './visit-page.tsx';

/** A post's form that was refused. */
export type RefusedReading = RefusedForm & { readonly post: number };

/** Properties of one post to go past. */
export interface PostSectionProps {
  readonly visitor: CrewVisitor;
  readonly place: { /** Path of the fence's page. */ readonly here: string; readonly fenceRef: string };
  readonly post: CheckedPost;
  readonly units: 'us' | 'metric';
  /** What this visit entered of it; null where nothing. */
  readonly reading: ReadingRecord | null;
  readonly photos: readonly VisitPhoto[];
  readonly method: InspectionMethod | null;
  readonly isOff: boolean;
  readonly refused: RefusedForm | null;
  /** Doubts about what was just saved; null where nothing was. */
  readonly told: readonly string[] | null;
}

function sectionWords({ wood: { section } }: CheckedPost, units: 'us' | 'metric', words: CrewWords): string {
  if (section.kind === 'round') return words.asSet(words.round(smallText(section.diameterMm, units)));
  const [width, depth] = [section.widthMm, section.depthMm].map((mm) => depthFigure(mm, units));
  return words.asSet(`${width} × ${depth} ${depthUnit(units)}`);
}

function conditionWords({ condition, sleeved }: CheckedPost, words: CrewWords): string {
  const { broken, leaning, closedOff, collarCracked } = condition;
  const known = { broken, leaning, closedOff, collarCracked, sleeved };
  return (Object.keys(known) as (keyof typeof known)[])
    .filter((key) => known[key])
    .map((key) => words.condition[key])
    .join(', ');
}

/** One post: what is to be done, what was found before, what is found now. */
export const PostSection: FC<PostSectionProps> = (props) => {
  const { visitor, place, post, units, reading, isOff, refused, told } = props;
  const words = CREW_WORDS[visitor.account.language];
  const title = `${words.fence(place.fenceRef)}, ${words.post(post.number)}`;
  const bad = conditionWords(post, words);
  return (
    <section class="post" id={`post-${post.number}`} aria-labelledby={`post-${post.number}-name`}>
      <div class="post-head">
        <h3 id={`post-${post.number}-name`}>{words.post(post.number)}</h3>
        <span class="small">{words.along(alongText(post.positionM, units))}</span>
        <b class="post-todo">
          {post.todo.length === 0 ? words.look : post.todo.map((kind) => words.works[kind]).join(', ')}
        </b>
      </div>
      {post.newPostAfter && <p class="post-todo">{words.newPostAfter}</p>}
      {bad !== '' && <p class="post-bad">{bad}</p>}
      <dl class="post-known">
        <div>
          <dt>{words.before}</dt>
          <dd>
            <Before post={post} units={units} words={words} />
            <span class="small">
              {sectionWords(post, units, words)}
              {post.believedWidthMm !== null &&
                `; ${words.believed(bandText(post.believedWidthMm, (mm) => depthFigure(mm, units)))} ${depthUnit(units)}`}
            </span>
          </dd>
        </div>
        <div class="post-now" hidden={reading === null}>
          <dt>{words.now}</dt>
          <dd data-now="yes">
            {reading && readingWords(readingFacts(reading), units, words.reading)}
            {reading && reading.notes !== '' && <span class="small">{reading.notes}</span>}
          </dd>
        </div>
      </dl>
      {told && (
        <p class="done" role="status">
          {words.stored} {told.map(words.doubt).join(' ')}
        </p>
      )}
      {refused && (
        <FormAlert>
          {words.notStored} {refused.reasons.join(' ')}
        </FormAlert>
      )}
      <ul class="kept-entries" data-entries-of={`post-${post.number}`} hidden></ul>
      {!isOff && <PostEntry {...props} title={title} words={words} />}
      <PhotoList photos={props.photos} words={words} />
    </section>
  );
};

const Before: FC<{
  readonly post: CheckedPost;
  readonly units: 'us' | 'metric';
  readonly words: CrewWords;
}> = ({ post: { lastReading }, units, words }) =>
  lastReading === null ? (
    <span>{words.neverRead}</span>
  ) : (
    <span>
      {lastReading.day}: {readingWords(lastReading.reading, units, words.reading)} (
      {words.methods[lastReading.method].toLowerCase()})
    </span>
  );

const PostEntry: FC<PostSectionProps & { readonly title: string; readonly words: CrewWords }> = (props) => {
  const { visitor, place, post, reading, method, refused, title, words } = props;
  const at = `${place.here}/posts/${post.number}`;
  const isClosedNow = reading?.closedOff ?? false;
  return (
    <>
      <details class="post-entry" open={refused !== null}>
        <summary>{reading === null ? words.enter : words.change}</summary>
        {method === null && <p class="hint method-missing">{words.methodFirst}</p>}
        <PostForm {...props} action={`${at}/reading`} />
        {reading !== null && (
          <EntryForm
            visitor={visitor}
            action={`${at}/taken-back`}
            title={`${title}: ${words.takeBack}`}
            kind="taken-back"
          >
            <button type="submit" class="wide">
              {words.takeBack}
            </button>
          </EntryForm>
        )}
        <PhotoForm
          visitor={visitor}
          action={`${place.here}/photos`}
          title={`${title}: ${words.photo}`}
          post={post.number}
        />
      </details>
      <EntryForm
        visitor={visitor}
        action={`${at}/closed-off`}
        title={`${title}: ${isClosedNow ? `${words.closeOff}: ${words.undo}` : words.closeOff}`}
        kind="closed-off"
        class={isClosedNow ? 'closed-off is-closed' : 'closed-off'}
      >
        <input type="hidden" name="day" value="" />
        <input type="hidden" name="closed_off" value={isClosedNow ? 'no' : 'yes'} />
        {isClosedNow && <span class="closed-now">{words.closedOffNow}</span>}
        <button type="submit" class="danger">
          {isClosedNow ? words.undo : words.closeOff}
        </button>
        {!isClosedNow && post.condition.closedOff && <span class="small">{words.closedOffBefore}</span>}
      </EntryForm>
    </>
  );
};
