type AttributeValue = string | number | undefined;

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text made safe for element content and attribute values of XML. */
export const escapeXml = (text: string): string => text.replace(/[&<>"]/g, (character) => ESCAPES[character] ?? '');

/** A coordinate with at most two decimals, so that the same picture has the same bytes on every machine. */
const coordinate = (value: number): string => {
  const rounded = Math.round(value * 100) / 100;
  return String(Object.is(rounded, -0) ? 0 : rounded);
};

/** One SVG element as text; undefined attributes are left out, numbers rounded to two decimals. Children are already SVG. */
export function svgElement(
  name: string,
  attributes: Readonly<Record<string, AttributeValue>>,
  children: readonly string[] = [],
): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? coordinate(value) : escapeXml(String(value))}"`)
    .join('');
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join('')}</${name}>`;
}
