import type { Child, FC } from 'hono/jsx';
import { FORM_TOKEN } from '../access/form-token.ts';

/** The hidden field that ties a form to its session. */
export const TokenField: FC<{ readonly token: string }> = ({ token }) => (
  <input type="hidden" name={FORM_TOKEN} value={token} />
);

/** A field with its name above it, what it asks for below, and what is wrong with it, told to those who do not see it too. */
export const FormField: FC<{
  readonly name: string;
  readonly label: string;
  readonly type?: 'text' | 'password';
  readonly value?: string;
  readonly autocomplete?: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
  readonly required?: boolean;
}> = ({ name, label, type = 'text', value, autocomplete = 'off', hint, fault, required = true }) => {
  const told = [...(hint ? [`${name}-hint`] : []), ...(fault ? [`${name}-fault`] : [])].join(' ');
  return (
    <div class="field">
      <label for={name}>{label}</label>
      <input
        id={name}
        name={name}
        type={type}
        value={value}
        autocomplete={autocomplete}
        autocapitalize="none"
        spellcheck={false}
        required={required}
        aria-describedby={told || undefined}
        aria-invalid={fault ? 'true' : undefined}
      />
      <FieldNotes name={name} hint={hint} fault={fault} />
    </div>
  );
};

/** A list to choose from, as `FormField`. */
export const ChoiceField: FC<{
  readonly name: string;
  readonly label: string;
  readonly chosen: string;
  readonly choices: readonly (readonly [value: string, text: string])[];
  readonly hint?: string;
  readonly fault?: string | undefined;
}> = ({ name, label, chosen, choices, hint, fault }) => (
  <div class="field">
    <label for={name}>{label}</label>
    <select
      id={name}
      name={name}
      aria-describedby={[hint && `${name}-hint`, fault && `${name}-fault`].filter(Boolean).join(' ') || undefined}
    >
      {choices.map(([value, text]) => (
        <option value={value} selected={value === chosen}>
          {text}
        </option>
      ))}
    </select>
    <FieldNotes name={name} hint={hint} fault={fault} />
  </div>
);

/** Boxes to tick under one heading. */
export const TickFields: FC<{
  readonly name: string;
  readonly legend: string;
  readonly ticked: readonly string[];
  readonly choices: readonly (readonly [value: string, text: string])[];
  readonly fault?: string | undefined;
}> = ({ name, legend, ticked, choices, fault }) => (
  <fieldset aria-describedby={fault ? `${name}-fault` : undefined}>
    <legend>{legend}</legend>
    {choices.map(([value, text], index) => (
      <div class="tick">
        <input id={`${name}-${index}`} type="checkbox" name={name} value={value} checked={ticked.includes(value)} />
        <label for={`${name}-${index}`}>{text}</label>
      </div>
    ))}
    <FieldNotes name={name} hint={undefined} fault={fault} />
  </fieldset>
);

const FieldNotes: FC<{
  readonly name: string;
  readonly hint: string | undefined;
  readonly fault: string | undefined;
}> = ({ name, hint, fault }) => (
  <>
    {hint && (
      <p class="hint" id={`${name}-hint`}>
        {hint}
      </p>
    )}
    {fault && (
      <p class="fault" id={`${name}-fault`}>
        {fault}
      </p>
    )}
  </>
);

/** A sentence that something went wrong, read out at once. */
export const FormAlert: FC<{ readonly children?: Child }> = ({ children }) => (
  <p class="alert" role="alert">
    {children}
  </p>
);
