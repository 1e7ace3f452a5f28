import type { FC } from 'hono/jsx';
import type { VisitPhoto } from '../../register/visit-photo-store.ts';
import { useMomentText } from '../frame/moment.tsx';
import { type CrewVisitor, EntryForm } from './crew-frame.tsx';
import type { CrewWords } from './crew-words.ts';
import { CREW_WORDS } from './crew-words-of.ts';

/** Pictures of a post or a fence, with when they were taken and by whom. */
export const PhotoList: FC<{ readonly photos: readonly VisitPhoto[]; readonly words: CrewWords }> = ({
  photos,
  words,
}) => {
  const momentText = useMomentText();
  return photos.length === 0 ? null : (
    <ul class="photo-list">
      {photos.map(({ id, post, fenceRef, takenAt, takenBy }) => {
        const where = post === null ? words.fence(fenceRef) : words.post(post);
        const said = words.photoOf(where, momentText(takenAt), takenBy);
        return (
          <li>
            <a href={`/today/photos/${id}`}>
              <img src={`/today/photos/${id}`} alt={said} loading="lazy" />
            </a>
            <span class="small">{said}</span>
          </li>
        );
      })}
    </ul>
  );
};

/** One picture to take or choose. */
export const PhotoForm: FC<{
  readonly visitor: CrewVisitor;
  readonly action: string;
  readonly title: string;
  /** Null: of the fence as a whole. */
  readonly post: number | null;
}> = ({ visitor, action, title, post }) => {
  const words = CREW_WORDS[visitor.account.language];
  const id = `photo-${post ?? 'fence'}`;
  return (
    <EntryForm visitor={visitor} action={action} title={title} kind="photo" class="photo-form">
      {post !== null && <input type="hidden" name="post" value={String(post)} />}
      <label for={id}>{words.addPhoto}</label>
      <input id={id} type="file" name="photo" accept="image/jpeg,image/png,image/webp" capture="environment" required />
      <button type="submit" data-without-script="yes">
        {words.sendPhoto}
      </button>
    </EntryForm>
  );
};
