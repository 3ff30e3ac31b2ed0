/**
 * The outside readers that the tests check every file with. Missing ones are installed where that is possible (Debian, as root);
 * otherwise they are named and the run stops: a check that silently skips proves nothing.
 */
import { spawnSync } from 'node:child_process';

interface OutsideTool {
  readonly name: string;
  readonly debianPackage: string;
  readonly probe: readonly [string, ...string[]];
}

const tools: readonly OutsideTool[] = [
  { name: 'admesh', debianPackage: 'admesh', probe: ['admesh', '--version'] },
  { name: 'prusa-slicer', debianPackage: 'prusa-slicer', probe: ['prusa-slicer', '--help'] },
  { name: 'python3 with ezdxf', debianPackage: 'python3-ezdxf', probe: ['/usr/bin/python3', '-c', 'import ezdxf'] },
  { name: 'python3 with gmsh', debianPackage: 'python3-gmsh', probe: ['/usr/bin/python3', '-c', 'import gmsh'] },
  { name: 'chromium', debianPackage: 'chromium', probe: ['/usr/bin/chromium', '--version'] },
  { name: 'rs274', debianPackage: 'linuxcnc-uspace', probe: ['dpkg', '-s', 'linuxcnc-uspace'] },
  { name: 'pdftoppm, pdftotext and pdfinfo', debianPackage: 'poppler-utils', probe: ['pdftoppm', '-v'] },
];

const isThere = ({ probe: [command, ...args] }: OutsideTool) =>
  spawnSync(command, args, { stdio: 'ignore' }).status === 0;
const list = (missing: readonly OutsideTool[]) =>
  missing.map(({ name, debianPackage }) => `${name} (Debian package ${debianPackage})`).join(', ');

function install(missing: readonly OutsideTool[]): void {
  const asRoot = process.getuid?.() === 0;
  const hasApt = spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0;
  if (!asRoot || !hasApt) return;
  console.log(`Installing for the tests: ${list(missing)}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const quiet = { stdio: ['ignore', 'ignore', 'inherit'] as ('ignore' | 'inherit')[], env };
  spawnSync('apt-get', ['update', '-qq'], quiet);
  const names = missing.map(({ debianPackage }) => debianPackage);
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...names], quiet);
}

const missing = tools.filter((tool) => !isThere(tool));
if (missing.length > 0) install(missing);
const still = tools.filter((tool) => !isThere(tool));
if (still.length > 0) {
  console.error(`The tests need these programs, which are not here: ${list(still)}. Install them and run again.`);
  process.exitCode = 1;
}
