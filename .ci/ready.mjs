// Makes a fresh checkout ready: packages, build tools, the build, and a browser and a PDF reader for its tests. Does only what is missing.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, cpSync, existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const wants = new Set(process.argv.slice(2));
const say = (text) => process.stderr.write(`${text}\n`);
const has = (program) => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0;
const run = (program, args) => spawnSync(program, args, { cwd: root, stdio: ['ignore', 2, 2] }).status === 0;
const mayInstall = process.getuid?.() === 0 && has('apt-get');

function stop(why, wayOut) {
  say(`\n${why}\n${wayOut}`);
  process.exit(1);
}

function debian(packages) {
  say(`Installing Debian packages: ${packages.join(' ')} …`);
  return (
    run('apt-get', ['update', '-qq']) &&
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages])
  );
}

function readyPackages() {
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  const stamp = join(root, 'node_modules', '.ready');
  const installed = existsSync(stamp) && readFileSync(stamp, 'utf8') === `${lock} ${process.version}`;
  if (installed) return;
  if (mayInstall && !(has('g++') && has('make') && has('python3'))) debian(['g++', 'make', 'python3']);
  say('Installing packages (the database driver may be compiled, which takes a minute or two) …');
  if (!run('npm', ['ci', '--no-audit', '--no-fund'])) {
    stop(
      'The packages could not be installed.',
      'The database driver is compiled where no ready-made one can be fetched: that needs python3, make, g++ and the headers of Node\n' +
        '(npm finds them through npm_config_nodedir where they are installed with the system). Then run the command again.',
    );
  }
  writeFileSync(stamp, `${lock} ${process.version}`);
}

const newest = (path) =>
  statSync(path).isDirectory()
    ? Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))))
    : statSync(path).mtimeMs;

function readyBuild() {
  const main = join(root, 'dist', 'cli', 'main.js');
  const sources = ['src', 'tsconfig.json', 'tsconfig.build.json', 'package-lock.json'].map((name) =>
    newest(join(root, name)),
  );
  if (existsSync(main) && statSync(main).mtimeMs > Math.max(...sources)) return;
  say('Building …');
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  if (!run(process.execPath, [join('node_modules', 'typescript', 'bin', 'tsc'), '-p', 'tsconfig.build.json'])) {
    stop('The build failed.', 'See the messages above; `npm run check` shows them with the other checks.');
  }
  // the phone's scripts are served as they are written: a compiler would make modules of them, and a worker is none
  cpSync(join(root, 'src', 'web', 'crew', 'phone'), join(root, 'dist', 'web', 'crew', 'phone'), {
    recursive: true,
    filter: (path) => !path.endsWith('.json'),
  });
  // `npx stormpale` runs the file itself.
  chmodSync(main, 0o755);
}

function readyBrowser() {
  if (existsSync('/usr/bin/chromium')) return;
  if (!mayInstall || !debian(['chromium'])) {
    say('NOT RUN ahead: no Chromium at /usr/bin/chromium and no right to install it; the browser suite will say so.');
  }
}

// The reader by which tests look at PDF files: another program than the one that makes them.
function readyPdfReader() {
  if (has('pdftotext') && has('pdfinfo') && has('pdffonts')) return;
  if (!mayInstall || !debian(['poppler-utils'])) {
    say(
      'NOT RUN ahead: no pdftotext, pdfinfo and pdffonts and no right to install them; the tests of PDF files will say so.',
    );
  }
}

const [major] = process.versions.node.split('.').map(Number);
if (major !== 20)
  stop(`This is Node ${process.version}; Stormpale runs on Node 20.`, 'Install Node 20 and run the command again.');
readyPackages();
if (wants.has('--build')) readyBuild();
if (wants.has('--browser')) {
  readyBrowser();
  readyPdfReader();
}
