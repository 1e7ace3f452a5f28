import { Hono } from 'hono';
import { ORDINARY_GROUPS } from '../../notify/matter-groups.ts';
import { readOwnerPreferences } from '../../register/owner-preference-store.ts';
import { OWNER_LANGUAGES } from '../../register/owner-record.ts';
import { readSettings } from '../../register/settings-store.ts';
import { dayInZone } from '../../service/clock.ts';
import { changePreferences, EVERYTHING, LONGEST_PAUSE_DAYS, unsubscribe } from '../../service/owner-preferences.ts';
import type { AppParts } from '../../service/service.ts';
import { addDays, isCalendarDay } from '../../units/calendar-day.ts';
import { isOneClick } from '../access/csrf.ts';
import type { PageEnv } from '../access/visitor.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { textField, textFields } from '../frame/text-field.ts';
import { NO_FENCE } from './owner-routes.tsx';
import { ownerView } from './owner-view.ts';
import { OwnerDangerPage, OwnerPreferencesPage, OwnerStopPage } from './preference-pages.tsx';
import { PREFERENCE_WORDS } from './preference-words.ts';

/** What an owner is written about: the page that chooses, the one that turns off danger, the one that stops the list. */
export function ownerPreferenceRoutes({ register, clock }: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  const parts = { register, clock };
  const preferencesOf = async (ownerRef: string) => (await readOwnerPreferences(register.db, ownerRef)) ?? EVERYTHING;
  const pauseDays = async (): Promise<{ readonly today: string; readonly latest: string }> => {
    const today = dayInZone(clock(), (await readSettings(register.db)).timeZone);
    return { today, latest: addDays(today, LONGEST_PAUSE_DAYS) };
  };

  app.get('/owner/:token/preferences', async (context) => {
    const view = await ownerView(context, parts, 'preferences');
    if (!view) return sayProblem(context, NO_FENCE);
    const preferences = await preferencesOf(view.owner.ref);
    return context.html(<OwnerPreferencesPage view={view} preferences={preferences} {...(await pauseDays())} />);
  });

  app.post('/owner/:token/preferences', async (context) => {
    const view = await ownerView(context, parts, 'preferences');
    if (!view) return sayProblem(context, NO_FENCE);
    const form = await context.req.parseBody({ all: true });
    const { today, latest } = await pauseDays();
    const pause = textField(form, 'pause').trim();
    const before = await preferencesOf(view.owner.ref);
    // a pause that is over may be sent back as it was shown
    const isPause = pause === '' || pause === before.pausedUntil;
    if (!isPause && !(isCalendarDay(pause) && pause >= today && pause <= latest)) {
      const fault = PREFERENCE_WORDS[view.owner.language].pauseFault;
      const page = (
        <OwnerPreferencesPage view={view} preferences={before} fault={fault} today={today} latest={latest} />
      );
      return context.html(page, 400);
    }
    const wanted = textFields(form, 'matter');
    const language = OWNER_LANGUAGES.find((each) => each === textField(form, 'language')) ?? view.owner.language;
    const done = await changePreferences(
      register,
      view.link,
      {
        change: {
          language,
          // danger has a page of its own: this form leaves it as it is
          muted: [
            ...before.muted.filter((group) => group === 'danger'),
            ...ORDINARY_GROUPS.filter((group) => !wanted.includes(group)),
          ],
          pausedUntil: pause === '' ? null : pause,
        },
        kind: 'preferences',
      },
      clock,
    );
    return context.redirect(`${view.home}/preferences?said=${done === 'changed' ? 'noted' : 'already'}`, 303);
  });

  app.get('/owner/:token/danger', async (context) => {
    const view = await ownerView(context, parts, 'danger');
    if (!view) return sayProblem(context, NO_FENCE);
    return context.html(<OwnerDangerPage view={view} preferences={await preferencesOf(view.owner.ref)} />);
  });

  app.post('/owner/:token/danger', async (context) => {
    const view = await ownerView(context, parts, 'danger');
    if (!view) return sayProblem(context, NO_FENCE);
    const form = await context.req.parseBody();
    const before = await preferencesOf(view.owner.ref);
    const turnsOff = textField(form, 'danger') === 'off';
    const turnsOn = textField(form, 'danger') === 'on';
    if (!turnsOn && !(turnsOff && textField(form, 'sure') === 'yes')) {
      const fault = PREFERENCE_WORDS[view.owner.language].danger.tickFault;
      return context.html(<OwnerDangerPage view={view} preferences={before} fault={fault} />, 400);
    }
    const ordinary = before.muted.filter((group) => group !== 'danger');
    const muted = turnsOff ? ['danger', ...ordinary] : ordinary;
    const done = await changePreferences(register, view.link, { change: { muted }, kind: 'preferences' }, clock);
    const said = done === 'changed' ? 'noted' : 'already';
    return context.redirect(`${view.home}/${turnsOff ? 'danger' : 'preferences'}?said=${said}`, 303);
  });

  app.get('/owner/:token/unsubscribe', async (context) => {
    const view = await ownerView(context, parts, 'unsubscribe');
    if (!view) return sayProblem(context, NO_FENCE);
    return context.html(<OwnerStopPage view={view} preferences={await preferencesOf(view.owner.ref)} />);
  });

  // RFC 8058: exactly one field, no cookie, and an answer that leads nowhere else
  app.post('/owner/:token/unsubscribe', async (context) => {
    const view = await ownerView(context, parts, 'unsubscribe');
    if (!view) return sayProblem(context, NO_FENCE);
    if (!isOneClick(context.req.path, await context.req.parseBody())) {
      return sayProblem(context, { status: 400, ...PREFERENCE_WORDS[view.owner.language].noForm });
    }
    await unsubscribe(register, view.link, clock);
    return context.html(<OwnerStopPage view={view} preferences={await preferencesOf(view.owner.ref)} />);
  });
  return app;
}
