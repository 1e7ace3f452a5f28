/** A form as it was sent. */
export type SentForm = Readonly<Record<string, unknown>>;

/** The text of a field; empty where the form has none, or a file in its place. */
export function textField(form: SentForm, name: string): string {
  const value = form[name];
  return typeof value === 'string' ? value : '';
}

/** The texts of a field that may be there several times, as boxes to tick are. */
export function textFields(form: SentForm, name: string): readonly string[] {
  const value = form[name];
  const values: readonly unknown[] = Array.isArray(value) ? value : [value];
  return values.filter((each): each is string => typeof each === 'string' && each !== '');
}
