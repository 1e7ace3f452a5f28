import { createSign, generateKeyPairSync, X509Certificate } from 'node:crypto';

/** A key and the certificate that it signed for itself, both PEM. */
export interface MadeCertificate {
  readonly key: string;
  readonly cert: string;
}

/** One value of ASN.1 in DER: its tag, its length, its content. */
function der(tag: number, ...content: readonly Buffer[]): Buffer {
  const body = Buffer.concat(content);
  const size = body.length;
  const length = size < 128 ? [size] : size < 256 ? [0x81, size] : [0x82, size >> 8, size & 0xff];
  return Buffer.concat([Buffer.from([tag, ...length]), body]);
}

const sequence = (...content: readonly Buffer[]): Buffer => der(0x30, ...content);
const oid = (hex: string): Buffer => der(0x06, Buffer.from(hex, 'hex'));
const text = (value: string): Buffer => der(0x0c, Buffer.from(value, 'utf8'));
const time = (value: string): Buffer => der(0x17, Buffer.from(value, 'ascii'));

/** Makes a certificate (X.509 v3, P-256) for localhost and 127.0.0.1, good for this century, that nobody vouches for. */
export function madeCertificate(): MadeCertificate {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const ecdsaWithSha256 = sequence(oid('2a8648ce3d040302'));
  const name = sequence(der(0x31, sequence(oid('550403'), text('Mail server on loopback'))));
  const names = sequence(der(0x82, Buffer.from('localhost')), der(0x87, Buffer.from([127, 0, 0, 1])));
  const basic = sequence(der(0x01, Buffer.from([0xff])));
  const extensions = sequence(
    sequence(oid('551d11'), der(0x04, names)),
    sequence(oid('551d13'), der(0x01, Buffer.from([0xff])), der(0x04, basic)),
  );
  const toSign = sequence(
    der(0xa0, der(0x02, Buffer.from([2]))),
    der(0x02, Buffer.from([1])),
    ecdsaWithSha256,
    name,
    sequence(time('200101000000Z'), time('491231235959Z')),
    name,
    publicKey.export({ type: 'spki', format: 'der' }),
    der(0xa3, extensions),
  );
  const signature = createSign('sha256').update(toSign).sign(privateKey);
  const whole = sequence(toSign, ecdsaWithSha256, der(0x03, Buffer.from([0]), signature));
  return {
    key: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    cert: new X509Certificate(whole).toString(),
  };
}
