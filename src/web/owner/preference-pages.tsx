import type { FC } from 'hono/jsx';
import { MATTER_GROUP_WORDS, ORDINARY_GROUPS } from '../../notify/matter-groups.ts';
import type { OwnerPreferences } from '../../register/owner-preference-store.ts';
import { ChoiceField, FormAlert, TickFields, TokenField } from '../frame/form-field.tsx';
import { LANGUAGE_NAMES } from '../frame/page-language.ts';
import { OneButton, OwnerShell, Said } from './owner-shell.tsx';
import type { OwnerView } from './owner-view.ts';
import { PREFERENCE_WORDS } from './preference-words.ts';

interface PreferencesProps {
  readonly view: OwnerView;
  readonly preferences: OwnerPreferences;
}

/** The page on which an owner says what to be written about, in which language, and not before when. */
export const OwnerPreferencesPage: FC<
  PreferencesProps & { readonly fault?: string | undefined; readonly today: string; readonly latest: string }
> = ({ view, preferences, fault, today, latest }) => {
  const { language, name } = view.owner;
  const words = PREFERENCE_WORDS[language];
  const isDangerOff = preferences.muted.includes('danger');
  return (
    <OwnerShell view={view} title={words.title} place="preferences" cautions={false}>
      <h1>{words.title}</h1>
      {view.said && <Said>{words[view.said]}</Said>}
      {fault && <FormAlert>{fault}</FormAlert>}
      <p class="lead">{words.lead(name)}</p>
      <form class="tall" method="post" action={`${view.home}/preferences`}>
        <TokenField token={view.formToken} />
        <ChoiceField
          name="language"
          label={words.language}
          hint={words.languageHint}
          chosen={language}
          choices={[
            ['en', LANGUAGE_NAMES.en],
            ['es', LANGUAGE_NAMES.es],
          ]}
        />
        <TickFields
          name="matter"
          legend={words.matters}
          ticked={ORDINARY_GROUPS.filter((group) => !preferences.muted.includes(group))}
          choices={ORDINARY_GROUPS.map((group) => [group, MATTER_GROUP_WORDS[language][group]] as const)}
        />
        <p class="hint">{words.mattersHint}</p>
        <div class="field">
          <label for="pause">{words.pause}</label>
          <input
            id="pause"
            name="pause"
            type="date"
            min={today}
            max={latest}
            value={preferences.pausedUntil ?? ''}
            aria-describedby="pause-hint"
          />
          <p class="hint" id="pause-hint">
            {words.pauseHint}
          </p>
        </div>
        <button type="submit">{words.save}</button>
      </form>
      <section class="answer-box">
        <p>{isDangerOff ? words.dangerOff : words.dangerOn}</p>
        {isDangerOff ? (
          <OneButton view={view} action={`${view.home}/danger`} button={words.turnOnDanger} hidden={{ danger: 'on' }} />
        ) : (
          <p>
            <a href={`${view.home}/danger`}>{words.turnOffDanger}</a>
          </p>
        )}
      </section>
    </OwnerShell>
  );
};

/** The page that says what turning off news of danger means, and asks again. */
export const OwnerDangerPage: FC<PreferencesProps & { readonly fault?: string | undefined }> = ({
  view,
  preferences,
  fault,
}) => {
  const words = PREFERENCE_WORDS[view.owner.language];
  const { danger } = words;
  const isOff = preferences.muted.includes('danger');
  return (
    <OwnerShell view={view} title={danger.title} place="preferences" cautions={false}>
      <h1>{danger.title}</h1>
      {isOff && <Said>{view.said === 'already' ? `${words.already} ${danger.isOff}` : danger.isOff}</Said>}
      {fault && <FormAlert>{fault}</FormAlert>}
      {danger.what.map((text, index) => (
        <p class={index === 0 ? 'lead' : undefined}>{text}</p>
      ))}
      {isOff ? (
        <OneButton view={view} action={`${view.home}/danger`} button={words.turnOnDanger} hidden={{ danger: 'on' }} />
      ) : (
        <form class="tall" method="post" action={`${view.home}/danger`}>
          <TokenField token={view.formToken} />
          <input type="hidden" name="danger" value="off" />
          <p>{danger.ask}</p>
          <div class="tick">
            <input id="sure" type="checkbox" name="sure" value="yes" required />
            <label for="sure">{danger.tick}</label>
          </div>
          <button type="submit">{danger.button}</button>
        </form>
      )}
      <p>
        <a href={`${view.home}/preferences`}>{isOff ? words.title : danger.keep}</a>
      </p>
    </OwnerShell>
  );
};

/** The page by which ordinary mails are stopped; what is still sent, and how to turn that off. */
export const OwnerStopPage: FC<PreferencesProps> = ({ view, preferences }) => {
  const words = PREFERENCE_WORDS[view.owner.language];
  const { stop } = words;
  const isStopped = ORDINARY_GROUPS.every((group) => preferences.muted.includes(group));
  const isDangerOff = preferences.muted.includes('danger');
  return (
    <OwnerShell view={view} title={stop.title} place="preferences" cautions={false}>
      <h1>{stop.title}</h1>
      {isStopped ? (
        <p class="done" role="status">
          {stop.done}
        </p>
      ) : (
        <>
          <p class="lead">{stop.lead}</p>
          <form method="post" action={`${view.home}/unsubscribe`} class="one-button">
            <input type="hidden" name="List-Unsubscribe" value="One-Click" />
            <button type="submit">{stop.button}</button>
          </form>
        </>
      )}
      <p>
        {isDangerOff ? stop.stillNone : `${stop.still} `}
        {!isDangerOff && <a href={`${view.home}/danger`}>{stop.dangerWay}</a>}
      </p>
      <p>
        <a href={`${view.home}/preferences`}>{stop.back}</a>
      </p>
    </OwnerShell>
  );
};
