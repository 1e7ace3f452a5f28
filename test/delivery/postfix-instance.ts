import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { madeCertificate } from '../service/made-certificate.ts';

/** A Postfix of our own: its configuration, queue and mail in a temporary folder, the system's own left alone. */
export interface PostfixInstance {
  readonly port: number;
  /** Certificate that vouches for it (PEM). */
  readonly certificateFile: string;
  /** What it answers by version. */
  readonly version: string;
  /** Settles once its queue is empty. */
  settled(): Promise<void>;
  /** The mails that it delivered, as its files hold them. */
  delivered(): readonly Buffer[];
  close(): void;
}

/** What installs packages on Debian. */
const PACKAGES = 'apt-get';

const run = (program: string, args: readonly string[]): { readonly status: number | null; readonly text: string } => {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8' });
  return { status, text: `${stdout}${stderr}` };
};

/** Installs Postfix where it is missing and may be installed. Throws with what is missing otherwise. */
export function requirePostfix(): void {
  if (process.getuid?.() !== 0) throw new Error('Postfix starts as root only: run this command as root');
  if (run('postconf', ['-d', 'mail_version']).status === 0) return;
  process.stderr.write('Installing the Debian package postfix …\n');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const install = ['install', '-y', '-qq', '--no-install-recommends', 'postfix'];
  for (const args of [['update', '-qq'], install]) spawnSync(PACKAGES, args, { env, stdio: ['ignore', 2, 2] });
  if (run('postconf', ['-d', 'mail_version']).status !== 0) {
    throw new Error('Postfix is not there and could not be installed: install the Debian package postfix');
  }
}

function idOf(name: string, flag: '-u' | '-g'): number {
  const { status, text } = run('id', [flag, name]);
  if (status !== 0) throw new Error(`there is no user ${name}: is Postfix installed as Debian has it?`);
  return Number(text);
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer();
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

const mainCf = (folder: string): string => `compatibility_level = 3.6
queue_directory = ${folder}/queue
data_directory = ${folder}/data
maillog_file = ${folder}/log/mail.log
maillog_file_prefixes = ${folder}
myhostname = mx.example.org
mydestination =
inet_interfaces = 127.0.0.1
inet_protocols = ipv4
mynetworks = 127.0.0.0/8
alias_maps =
local_recipient_maps =
virtual_mailbox_domains = static:all
virtual_mailbox_maps = static:inbox/
virtual_mailbox_base = ${folder}/mail
virtual_uid_maps = static:${idOf('nobody', '-u')}
virtual_gid_maps = static:${idOf('nobody', '-g')}
virtual_minimum_uid = 1
smtpd_tls_cert_file = ${folder}/tls/cert.pem
smtpd_tls_key_file = ${folder}/tls/key.pem
smtpd_tls_security_level = encrypt
smtpd_relay_restrictions = permit_mynetworks, reject
in_flow_delay = 0s
`;

const masterCf = (port: number): string => `127.0.0.1:${port} inet n - n - - smtpd
pickup unix n - n 60 1 pickup
cleanup unix n - n - 0 cleanup
qmgr unix n - n 300 1 qmgr
tlsmgr unix - - n 1000? 1 tlsmgr
rewrite unix - - n - - trivial-rewrite
bounce unix - - n - 0 bounce
defer unix - - n - 0 bounce
trace unix - - n - 0 bounce
verify unix - - n - 1 verify
flush unix n - n 1000? 0 flush
proxymap unix - - n - - proxymap
error unix - - n - - error
retry unix - - n - - error
virtual unix - n n - - virtual
anvil unix - - n - 1 anvil
scache unix - - n - 1 scache
showq unix n - n - - showq
postlog unix-dgram n - n - 1 postlogd
`;

const filesBelow = (folder: string): number =>
  existsSync(folder)
    ? readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) => each.isFile()).length
    : 0;

/** Starts it on a free port of loopback with a certificate of its own making; TLS is required. */
export async function startPostfix(): Promise<PostfixInstance> {
  requirePostfix();
  const folder = mkdtempSync(join(tmpdir(), 'stormpale-postfix-'));
  chmodSync(folder, 0o755);
  const config = join(folder, 'config');
  for (const name of ['config', 'queue', 'data', 'log', 'mail', 'tls']) mkdirSync(join(folder, name));
  chownSync(join(folder, 'data'), idOf('postfix', '-u'), idOf('postfix', '-g'));
  chownSync(join(folder, 'mail'), idOf('nobody', '-u'), idOf('nobody', '-g'));
  const { key, cert } = madeCertificate();
  writeFileSync(join(folder, 'tls', 'cert.pem'), cert);
  writeFileSync(join(folder, 'tls', 'key.pem'), key, { mode: 0o600 });
  const port = await freePort();
  writeFileSync(join(config, 'main.cf'), mainCf(folder));
  writeFileSync(join(config, 'master.cf'), masterCf(port));
  const started = run('postfix', ['-c', config, 'start']);
  if (started.status !== 0) {
    const log = join(folder, 'log', 'mail.log');
    const words = existsSync(log) ? readFileSync(log, 'utf8').slice(-2000) : '';
    throw new Error(`Postfix did not start:\n${started.text}${words}`);
  }
  const inbox = join(folder, 'mail', 'inbox', 'new');
  return {
    port,
    certificateFile: join(folder, 'tls', 'cert.pem'),
    version: run('postconf', ['-d', '-h', 'mail_version']).text.trim(),
    settled: async () => {
      const queues = ['maildrop', 'incoming', 'active', 'deferred'].map((name) => join(folder, 'queue', name));
      while (queues.some((queue) => filesBelow(queue) > 0)) await pause(200);
    },
    delivered: () => (existsSync(inbox) ? readdirSync(inbox).map((name) => readFileSync(join(inbox, name))) : []),
    close: () => {
      run('postfix', ['-c', config, 'stop']);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
