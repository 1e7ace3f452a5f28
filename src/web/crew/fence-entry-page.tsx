import type { FC } from 'hono/jsx';
import { lengthText } from '../../drawing/quantity-text.ts';
import { postNumbersText } from '../../drawing/what-if-words.ts';
import { INSPECTION_METHODS, type InspectionMethod } from '../../forecast/evidence/inspection.ts';
import type { ReadingRecord } from '../../register/reading-record.ts';
import type { VisitPhoto } from '../../register/visit-photo-store.ts';
import type { Visit } from '../../season/visit/visit.ts';
import type { FenceSheet } from '../../service/visit-sheet.ts';
import { FormAlert } from '../frame/form-field.tsx';
import { CrewPage, type CrewVisitor } from './crew-frame.tsx';
import { fencePath, visitPath, worksWords } from './crew-marks.ts';
import type { CrewWords } from './crew-words.ts';
import { CREW_WORDS } from './crew-words-of.ts';
import { PhotoForm, PhotoList } from './photo-parts.tsx';
import { PostSection, type RefusedReading } from './post-section.tsx';

/** Properties of the page on which a fence is entered post by post. */
export interface FenceEntryProps {
  readonly visitor: CrewVisitor;
  readonly visit: Visit;
  readonly fenceRef: string;
  readonly sheet: FenceSheet;
  /** What this visit entered already, by post. */
  readonly readings: ReadonlyMap<number, ReadingRecord>;
  /** How the fence is looked at; null until somebody says. */
  readonly method: InspectionMethod | null;
  readonly photos: readonly VisitPhoto[];
  readonly refused: RefusedReading | null;
  /** What came of what was just sent. */
  readonly told: { readonly post: number | null; readonly doubts: readonly string[] } | null;
}

/** More posts than these get a list to jump by. */
const MOST_WITHOUT_LIST = 6;

/** One fence of a visit, post by post. */
export const FenceEntryPage: FC<FenceEntryProps> = (props) => {
  const { visitor, visit, fenceRef, sheet, readings, method, photos } = props;
  const words = CREW_WORDS[visitor.account.language];
  const { units } = sheet.site;
  const { run } = sheet.facts;
  const { posts } = sheet.checks;
  const isOff = visit.state === 'missed' || visit.state === 'cancelled';
  const consequence = words.consequence[sheet.consequence];
  const here = fencePath(visit.uid, fenceRef);
  return (
    <CrewPage title={words.fence(fenceRef)} visitor={visitor}>
      <p class="back">
        <a class="big-back" href={visitPath(visit.uid)}>
          {words.backToVisit}
        </a>
      </p>
      <h1>{words.fence(fenceRef)}</h1>
      <p class="lead">{worksWords(sheet.works, words)}</p>
      <p class="where">
        {sheet.site.name}. {words.fenceInShort(lengthText(run.heightM, units), lengthText(run.runLengthM, units))}
        {consequence !== undefined && `, ${consequence}`}. {words.countedFrom(sheet.namedEnd)}
      </p>
      {isOff && <FormAlert>{words.isOff}</FormAlert>}
      {sheet.accessNote !== '' && (
        <p class="said">
          <b>{words.gettingThere}:</b> {sheet.accessNote}
        </p>
      )}
      {sheet.note !== '' && (
        <p class="said">
          <b>{words.aboutIt}:</b> {sheet.note}
        </p>
      )}
      <Findings {...props} words={words} />
      {!isOff && <MethodChoice method={method} words={words} />}
      <h2 class="posts-head">
        {words.posts} <span class="small">{words.entered(readings.size, posts.length)}</span>
      </h2>
      {posts.length > MOST_WITHOUT_LIST && (
        <nav class="post-jump" aria-label={words.posts}>
          <ul>
            {posts.map(({ number, todo }) => (
              <li>
                <a
                  href={`#post-${number}`}
                  class={
                    [readings.has(number) ? 'is-read' : '', todo.length > 0 ? 'has-works' : ''].join(' ').trim() ||
                    undefined
                  }
                  aria-label={words.post(number)}
                >
                  {number}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
      {posts.map((post) => (
        <PostSection
          visitor={visitor}
          place={{ here, fenceRef }}
          post={post}
          units={units}
          reading={readings.get(post.number) ?? null}
          photos={photos.filter((photo) => photo.post === post.number)}
          method={method}
          isOff={isOff}
          refused={props.refused?.post === post.number ? props.refused : null}
          told={props.told?.post === post.number ? props.told.doubts : null}
        />
      ))}
      <section class="photos">
        <h2>{words.photos}</h2>
        <PhotoList photos={photos} words={words} />
        {!isOff && (
          <PhotoForm
            visitor={visitor}
            action={`${here}/photos`}
            title={`${words.fence(fenceRef)}: ${words.photo}`}
            post={null}
          />
        )}
      </section>
    </CrewPage>
  );
};

const Findings: FC<FenceEntryProps & { readonly words: CrewWords }> = ({ sheet, words }) => {
  const { posts } = sheet.checks;
  const where = (is: (post: (typeof posts)[number]) => boolean): string =>
    postNumbersText(
      posts
        .filter(is)
        .map(({ number }) => number)
        .sort((a, b) => a - b),
    );
  const found = [
    ['closedOff', where(({ condition }) => condition.closedOff)],
    ['broken', where(({ condition }) => condition.broken)],
    ['leaning', where(({ condition }) => condition.leaning)],
    ['crackedCollars', where(({ condition }) => condition.collarCracked)],
    ['hollow', where(({ condition }) => condition.cavityDiameterMm > 0)],
  ] as const;
  const said = found.filter(([, numbers]) => numbers !== '');
  return said.length === 0 ? null : (
    <ul class="findings">
      {said.map(([kind, numbers]) => (
        <li>{words.finding(kind, numbers)}</li>
      ))}
    </ul>
  );
};

const MethodChoice: FC<{ readonly method: InspectionMethod | null; readonly words: CrewWords }> = ({
  method,
  words,
}) => (
  <form class="method-choice" method="get" data-method-choice="yes">
    <details open={method === null}>
      <summary>
        <span>{words.method}</span>
        <b data-method-name="yes">{method === null ? '' : words.methods[method]}</b>
      </summary>
      <fieldset>
        <legend class="hint">{words.methodHint}</legend>
        <div class="big-choices">
          {INSPECTION_METHODS.map((each) => (
            <label class="big-choice">
              <input type="radio" name="method" value={each} checked={each === method} required />
              <span>{words.methods[each]}</span>
            </label>
          ))}
        </div>
        <button type="submit" class="primary" data-without-script="yes">
          {words.useMethod}
        </button>
      </fieldset>
    </details>
    {method === null && (
      <p class="hint" data-method-first="yes">
        {words.methodFirst}
      </p>
    )}
  </form>
);
