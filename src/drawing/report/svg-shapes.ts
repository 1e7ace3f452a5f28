/** One element of a drawing: its name, what is written on it, what is inside. */
export interface SvgShape {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgShape[];
  /** The text between its tags. */
  readonly text: string;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function plain(text: string): string {
  return text.replace(/&(#x?[0-9a-f]+|[a-z]+);/gi, (whole, name: string) => {
    if (name.startsWith('#x')) return String.fromCodePoint(Number.parseInt(name.slice(2), 16));
    if (name.startsWith('#')) return String.fromCodePoint(Number(name.slice(1)));
    return ENTITIES[name] ?? whole;
  });
}

const PIECE = /<(\/?)([a-zA-Z][\w:-]*)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|([^<]+)/g;

const attributesOf = (written: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    [...written.matchAll(/([\w:-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, plain(value)]),
  );

interface Open extends SvgShape {
  readonly children: SvgShape[];
  text: string;
}

/**
 * The shapes of a drawing as this program writes them (`svgElement`): elements, attributes in double quotes, texts. Throws
 * RangeError where a tag is not closed, or anything stands there that is none of these.
 */
export function svgShapes(svg: string): SvgShape {
  const root: Open = { name: '', attributes: {}, children: [], text: '' };
  const open: Open[] = [root];
  let read = 0;
  for (const piece of svg.matchAll(PIECE)) {
    if (piece.index !== read) break;
    read = piece.index + piece[0].length;
    const [, closes, name = '', written = '', alone, text] = piece;
    const inside = open.at(-1) ?? root;
    if (text !== undefined) inside.text += plain(text);
    else if (closes === '/') {
      if (open.length < 2 || inside.name !== name)
        throw new RangeError(`drawing: </${name}> closes nothing that is open`);
      open.pop();
    } else {
      const shape: Open = { name, attributes: attributesOf(written), children: [], text: '' };
      inside.children.push(shape);
      if (alone !== '/') open.push(shape);
    }
  }
  const [first] = root.children;
  if (read !== svg.length || open.length > 1 || !first) {
    throw new RangeError(`drawing: not read beyond ${JSON.stringify(svg.slice(read, read + 40))}`);
  }
  return first;
}
