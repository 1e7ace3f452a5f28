import type { DemoRole } from '../../service/demo-sign-in.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** The words of the page on which people sign in. */
export interface SignInWords {
  readonly title: string;
  readonly name: string;
  readonly password: string;
  readonly submit: string;
  readonly forgotten: string;
  readonly wrong: string;
  readonly wait: (seconds: number) => string;
  readonly signedOut: string;
  readonly demoTitle: string;
  readonly demoText: string;
  readonly demoSetup: string;
  readonly demoSetupLink: string;
  readonly demoWays: Readonly<Record<DemoRole, readonly [button: string, what: string]>>;
}

const inMinutes = (seconds: number): number => Math.ceil(seconds / 60);

/** The words of the page on which people sign in, by language. */
export const SIGN_IN_WORDS: Readonly<Record<PageLanguage, SignInWords>> = {
  en: {
    title: 'Sign in',
    name: 'Name',
    password: 'Password',
    submit: 'Sign in',
    forgotten: 'Forgotten your password? The fence office can set another one.',
    wrong: 'That name and password do not go together. Check both; capitals count in the password.',
    wait: (seconds) =>
      `Too many tries. Wait ${seconds < 120 ? `${seconds} seconds` : `${inMinutes(seconds)} minutes`}, then try again.`,
    signedOut: 'You are signed out.',
    demoTitle: 'Look around the demo',
    demoText:
      'This register holds an invented demo: nobody in it is real, and nothing leaves this machine. Choose whom to be; no password is asked. This is offered on this machine only, and only until somebody has an account.',
    demoSetup: 'Is this your own register already?',
    demoSetupLink: 'Make the first account of the office',
    demoWays: {
      office: ['The office', 'everything: every fence, the outbox, the mails'],
      crew: ['A crew', 'its visits, what it enters there, the fences'],
      board: ['A board', 'one association’s own fences, to read only'],
      owner: ['An owner', 'what a signed link shows Tamsin Orrowby'],
      'owner-es': ['An owner (Spanish)', 'what a signed link shows Ximena Tordesol'],
    },
  },
  es: {
    title: 'Iniciar sesión',
    name: 'Nombre',
    password: 'Contraseña',
    submit: 'Entrar',
    forgotten: '¿Olvidó su contraseña? La oficina de cercas puede ponerle otra.',
    wrong: 'Ese nombre y esa contraseña no corresponden. Revise los dos; en la contraseña cuentan las mayúsculas.',
    wait: (seconds) =>
      `Demasiados intentos. Espere ${seconds < 120 ? `${seconds} segundos` : `${inMinutes(seconds)} minutos`} e inténtelo de nuevo.`,
    signedOut: 'Ha cerrado la sesión.',
    demoTitle: 'Recorrer la demostración',
    demoText:
      'Este registro contiene una demostración inventada: nadie en ella es real y nada sale de esta máquina. Elija quién ser; no se pide contraseña. Se ofrece solo en esta máquina, y solo hasta que alguien tenga una cuenta.',
    demoSetup: '¿Ya es su propio registro?',
    demoSetupLink: 'Crear la primera cuenta de la oficina',
    demoWays: {
      office: ['La oficina', 'todo: cada cerca, la bandeja de salida, los correos'],
      crew: ['Una cuadrilla', 'sus visitas, lo que anota en ellas, las cercas'],
      board: ['Una junta', 'las cercas de una asociación, solo para leer'],
      owner: ['Una propietaria (inglés)', 'lo que un enlace firmado muestra a Tamsin Orrowby'],
      'owner-es': ['Una propietaria', 'lo que un enlace firmado muestra a Ximena Tordesol'],
    },
  },
};
