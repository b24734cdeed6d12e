// The real Chromium that journeys run in: an installed one, else the one that comes inside a package.
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { repositoryRoot } from '@rootclock/server/config';
import { chromium, type Browser as RunningBrowser } from 'playwright-core';

export interface Browser {
  executablePath: string;
  /** Set for the browser's process alone: where its few libraries and fonts lie when it came in a package. */
  env: Record<string, string>;
}

const installed = [
  '/usr/bin/chromium',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** CHROME_PATH names a browser; `packaged` asks for the one in the package even where another is installed. */
export async function prepareBrowser(wanted = process.env.CHROME_PATH): Promise<Browser> {
  if (wanted !== 'packaged') {
    const executablePath = [wanted ?? '', ...installed].find((file) => file !== '' && existsSync(file));
    if (executablePath !== undefined) return { executablePath, env: {} };
  }
  const folder = await unpackOnce();
  return {
    executablePath: path.join(folder, 'chromium'),
    env: { LD_LIBRARY_PATH: path.join(folder, 'al2023', 'lib'), FONTCONFIG_PATH: path.join(folder, 'fonts') },
  };
}

/** Unpacks beside this clone's packages and not in the shared temporary folder, where two clones would meet. */
async function unpackOnce(): Promise<string> {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  const { version } = JSON.parse(readFileSync(path.join(path.dirname(entry), '..', 'package.json'), 'utf8')) as {
    version: string;
  };
  const folder = path.join(repositoryRoot, 'node_modules', '.rootclock', `browser-${version}`);
  if (existsSync(folder)) return folder;
  const draft = `${folder}.${process.pid}`;
  mkdirSync(draft, { recursive: true });
  const before = process.env.TMPDIR;
  // The package knows no other way to be told where to unpack.
  process.env.TMPDIR = draft;
  try {
    const { default: packed, inflate } = await import('@sparticuz/chromium');
    await packed.executablePath();
    await inflate(path.join(path.dirname(entry), '..', 'bin', 'al2023.tar.br'));
    writeFileSync(path.join(draft, 'fonts', 'fonts.conf'), fontsIn(path.join(folder, 'fonts')));
  } finally {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
  }
  try {
    renameSync(draft, folder);
  } catch (error) {
    // Another run in this clone was faster: its unpacked browser is as good.
    rmSync(draft, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

/** The package's own list names folders of the shared temporary one; a browser that finds no font at all ends as soon as it looks for one. */
function fontsIn(folder: string): string {
  const escaped = folder.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  return `<?xml version="1.0"?>\n<!DOCTYPE fontconfig SYSTEM "fonts.dtd">\n<fontconfig><dir>${escaped}</dir><cachedir>${escaped}/cache</cachedir></fontconfig>\n`;
}

export const launchOptions = ({ executablePath, env }: Browser) => ({
  executablePath,
  env: { ...(process.env as Record<string, string>), ...env },
  // Tests often run as root or in a container, where Chromium's own sandbox cannot be set up; only our pages are opened.
  chromiumSandbox: false,
  args: [
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-dev-shm-usage',
  ],
});

export const launchBrowser = (browser: Browser): Promise<RunningBrowser> => chromium.launch(launchOptions(browser));
