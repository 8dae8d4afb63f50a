import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** How every test starts Chromium: no sandbox (it needs rights a container lacks) and no calls of its own. */
export const chromiumFlags: readonly string[] = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-gpu',
  '--no-first-run',
  '--disable-component-update',
  '--disable-sync',
];

/** What the search may see and do; a test gives its own. */
export interface Machine {
  readonly platform: string;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly isRoot: boolean;
  readonly exists: (path: string) => boolean;
  /** Runs a command with its output shown; true when it succeeded. */
  readonly run: (command: string, args: readonly string[]) => boolean;
  readonly say: (line: string) => void;
}

const namesInPath = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];

const macPlaces = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

const windowsPlaces = ['Google\\Chrome\\Application\\chrome.exe', 'Chromium\\Application\\chrome.exe'];

/**
 * The path of a Chromium to test with: `CHROME_PATH`, else an installed one, else, on Debian as root, one that is
 * installed now.
 *
 * @throws when there is none and none can be installed; the message says how to get one.
 */
export async function findChromium(machine: Machine = thisMachine()): Promise<string> {
  const asked = machine.environment.CHROME_PATH;
  if (asked !== undefined && asked !== '') {
    if (machine.exists(asked)) return asked;
    throw new Error(`CHROME_PATH is ${asked}, but there is no such file.`);
  }
  const found = installedChromium(machine) ?? (installOnDebian(machine) ? installedChromium(machine) : undefined);
  if (found !== undefined) return found;
  throw new Error(
    'The browser tests need Chromium or Chrome and found none. Install one (Debian: apt-get install chromium), ' +
      'or set CHROME_PATH to the path of its program.',
  );
}

function installedChromium(machine: Machine): string | undefined {
  return placesOf(machine).find((place) => machine.exists(place));
}

function placesOf({ platform, environment }: Machine): string[] {
  if (platform === 'win32') {
    const roots = [environment.PROGRAMFILES, environment['PROGRAMFILES(X86)'], environment.LOCALAPPDATA];
    return roots.flatMap((root) => (root === undefined ? [] : windowsPlaces.map((place) => `${root}\\${place}`)));
  }
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const inPath = namesInPath.flatMap((name) => folders.map((folder) => join(folder, name)));
  return platform === 'darwin' ? [...macPlaces, ...inPath] : inPath;
}

function installOnDebian(machine: Machine): boolean {
  if (machine.platform !== 'linux' || !machine.isRoot || !machine.exists('/etc/debian_version')) return false;
  machine.say('No Chromium found: installing it with apt-get update && apt-get install -y chromium');
  return machine.run('apt-get', ['update']) && machine.run('apt-get', ['install', '-y', 'chromium']);
}

function thisMachine(): Machine {
  return {
    platform: process.platform,
    environment: process.env,
    isRoot: process.getuid?.() === 0,
    exists: existsSync,
    run: (command, args) => spawnSync(command, args, { stdio: 'inherit' }).status === 0,
    say: (line) => console.log(line),
  };
}
