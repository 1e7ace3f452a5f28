import type { FC } from 'hono/jsx';
import type { NamedAnswer } from '../../register/owner-answer-store.ts';
import type { CallWish } from '../../service/owner-answers.ts';
import { FormField, TokenField } from '../frame/form-field.tsx';
import type { PageLanguage } from '../frame/page-language.ts';
import { OwnerShell, Said } from './owner-shell.tsx';
import type { OwnerView } from './owner-view.ts';

interface CallWords {
  readonly title: string;
  readonly lead: string;
  readonly phone: string;
  readonly phoneHint: string;
  readonly when: string;
  readonly whenHint: string;
  readonly about: string;
  readonly aboutHint: string;
  readonly button: string;
  readonly waiting: (day: string) => string;
  readonly wished: (wish: CallWish) => readonly string[];
  readonly noted: string;
  readonly already: string;
  readonly tooLong: (most: number) => string;
}

/** The words of the page on which an owner asks for a call, by language. */
export const CALL_WORDS: Readonly<Record<PageLanguage, CallWords>> = {
  en: {
    title: 'Ask for a call',
    lead: 'The office calls you. You need not fill anything in.',
    phone: 'Number to call',
    phoneHint: 'Leave it empty where the office has your number.',
    when: 'When it suits you',
    whenHint: 'As “weekdays after five”.',
    about: 'What it is about',
    aboutHint: 'A line or two; what you see at the fence helps.',
    button: 'Ask for a call',
    waiting: (day) => `You asked for a call on ${day}. The office has you on its list; asking again is not needed.`,
    wished: ({ phone, when, about }) => [
      ...(phone ? [`Number: ${phone}`] : []),
      ...(when ? [`When: ${when}`] : []),
      ...(about ? [`About: ${about}`] : []),
    ],
    noted: 'Thank you. You are on the list of those to call.',
    already: 'You were on the list already. Nothing was added.',
    tooLong: (most) => `Write at most ${most} characters.`,
  },
  es: {
    title: 'Pedir una llamada',
    lead: 'La oficina le llama. No hace falta que escriba nada.',
    phone: 'Número al que llamar',
    phoneHint: 'Déjelo vacío si la oficina ya lo tiene.',
    when: 'Cuándo le conviene',
    whenHint: 'Por ejemplo «entre semana después de las cinco».',
    about: 'De qué se trata',
    aboutHint: 'Una línea o dos; lo que vea en la cerca ayuda.',
    button: 'Pedir una llamada',
    waiting: (day) =>
      `Usted pidió una llamada el ${day}. La oficina lo tiene en su lista; no hace falta pedirla otra vez.`,
    wished: ({ phone, when, about }) => [
      ...(phone ? [`Número: ${phone}`] : []),
      ...(when ? [`Cuándo: ${when}`] : []),
      ...(about ? [`Asunto: ${about}`] : []),
    ],
    noted: 'Gracias. Está en la lista de llamadas.',
    already: 'Ya estaba en la lista. No se añadió nada.',
    tooLong: (most) => `Escriba ${most} caracteres como mucho.`,
  },
};

/** The page on which an owner asks for a call. */
export const OwnerCallPage: FC<{
  readonly view: OwnerView;
  /** The call that they wait for; null where none. */
  readonly open: NamedAnswer | null;
  readonly wish: CallWish;
  readonly faults: Readonly<Partial<Record<keyof CallWish, string>>>;
}> = ({ view, open, wish, faults }) => {
  const words = CALL_WORDS[view.owner.language];
  return (
    <OwnerShell view={view} title={words.title} place="call" cautions={false}>
      <h1>{words.title}</h1>
      {view.said && <Said>{words[view.said]}</Said>}
      {open ? (
        <>
          <p class="lead">{words.waiting(view.dayOf(open.at))}</p>
          <ul class="plain wide-text">
            {words.wished(JSON.parse(open.detail) as CallWish).map((line) => (
              <li>{line}</li>
            ))}
          </ul>
        </>
      ) : (
        <>
          <p class="lead">{words.lead}</p>
          <form class="tall" method="post" action={`${view.home}/call`}>
            <TokenField token={view.formToken} />
            <FormField
              name="phone"
              label={words.phone}
              hint={words.phoneHint}
              autocomplete="tel"
              required={false}
              value={wish.phone}
              fault={faults.phone}
            />
            <FormField
              name="when"
              label={words.when}
              hint={words.whenHint}
              required={false}
              value={wish.when}
              fault={faults.when}
            />
            <FormField
              name="about"
              label={words.about}
              hint={words.aboutHint}
              required={false}
              value={wish.about}
              fault={faults.about}
            />
            <button type="submit">{words.button}</button>
          </form>
        </>
      )}
    </OwnerShell>
  );
};
