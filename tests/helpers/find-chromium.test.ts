import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findChromium, type Machine } from './find-chromium.ts';

/** A Linux machine with the given files, that installs nothing. */
function machineWith(files: readonly string[], changes: Partial<Machine> = {}): Machine {
  return {
    platform: 'linux',
    environment: { PATH: '/opt/tools' },
    isRoot: false,
    exists: (path) => files.includes(path),
    run: () => false,
    say: () => undefined,
    ...changes,
  };
}

const chromium = join('/opt/tools', 'chromium');

describe('where the tests find a browser', () => {
  it('takes CHROME_PATH before an installed one', async () => {
    const machine = machineWith(['/my/chrome', chromium], {
      environment: { PATH: '/opt/tools', CHROME_PATH: '/my/chrome' },
    });
    expect(await findChromium(machine)).toBe('/my/chrome');
  });

  it('refuses a CHROME_PATH that is no file instead of taking another browser', async () => {
    const machine = machineWith([chromium], { environment: { PATH: '/opt/tools', CHROME_PATH: '/my/chrome' } });
    await expect(findChromium(machine)).rejects.toThrow('CHROME_PATH is /my/chrome');
  });

  it('takes one from PATH', async () => {
    expect(await findChromium(machineWith([chromium]))).toBe(chromium);
  });

  it('takes the usual place on a Mac and on Windows', async () => {
    const onMac = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
    expect(await findChromium(machineWith([onMac], { platform: 'darwin' }))).toBe(onMac);
    const onWindows = 'C:\\Programs\\Google\\Chrome\\Application\\chrome.exe';
    const windows = { platform: 'win32', environment: { PROGRAMFILES: 'C:\\Programs' } };
    expect(await findChromium(machineWith([onWindows], windows))).toBe(onWindows);
  });

  it('installs Chromium on Debian as root, says so, and takes what was installed', async () => {
    const files = ['/etc/debian_version'];
    const commands: string[] = [];
    const said: string[] = [];
    const run = (command: string, args: readonly string[]): boolean => {
      commands.push([command, ...args].join(' '));
      if (args.includes('install')) files.push(chromium);
      return true;
    };
    const machine = machineWith(files, { isRoot: true, run, say: (line) => said.push(line) });
    expect(await findChromium(machine)).toBe(chromium);
    expect(commands).toEqual(['apt-get update', 'apt-get install -y chromium']);
    expect(said.join()).toContain('installing');
  });

  it('installs nothing without root, and says how to get a browser', async () => {
    const run = (): boolean => {
      throw new Error('must not run');
    };
    const search = findChromium(machineWith(['/etc/debian_version'], { run }));
    await expect(search).rejects.toThrow('set CHROME_PATH');
  });
});
