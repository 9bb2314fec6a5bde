// `npm test`: types, lint, unused code, then the tests; with arguments, vitest alone with these.
// The last line is always `N passed, N failed`: tests, plus one failure for each check that fails.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { prepareWorkspace } from './prepare-workspace.mjs'
import { root } from './workspace-root.mjs'

const checks = [
  { name: 'types', package: 'typescript', bin: 'tsc', args: ['--noEmit'] },
  {
    name: 'format and lint',
    package: '@biomejs/biome',
    bin: 'biome',
    // Kept plain: its output goes through a pipe, and a log is read without colours.
    args: ['ci', '--error-on-warnings', '--colors=off', '.'],
  },
  { name: 'unused code', package: 'knip', bin: 'knip', args: ['--no-progress'] },
]
const vitestArgs = process.argv.slice(2)
const problems = []
let passed = 0
let skipped = 0

try {
  await prepareWorkspace()
  if (vitestArgs.length === 0) for (const check of checks) runCheck(check)
  runVitest()
} catch (error) {
  problems.push(error.message)
}
summarize()

function runCheck({ name, args, ...tool }) {
  const began = Date.now()
  const { status } = run(tool, args, (output) => process.stdout.write(output))
  console.log(
    `${status === 0 ? 'ok  ' : 'FAIL'} ${name} (${tool.bin}, ${((Date.now() - began) / 1000).toFixed(1)} s)`,
  )
  if (status !== 0) problems.push(`${name}: ${tool.bin} ${args.join(' ')} found something, see above`)
}

function runVitest() {
  const folder = mkdtempSync(join(tmpdir(), 'putback-test-'))
  const report = join(folder, 'report.json')
  try {
    const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
    // A forgotten `.only` would hide every other test.
    if (vitestArgs.length === 0) args.push('--no-allowOnly')
    const { status } = run({ package: 'vitest', bin: 'vitest' }, [...args, ...vitestArgs])
    countTests(JSON.parse(readFileSync(report, 'utf8')), status)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function countTests(report, status) {
  passed = report.numPassedTests
  skipped = report.numPendingTests + report.numTodoTests
  const before = problems.length
  for (const file of report.testResults) {
    const failures = file.assertionResults.filter((test) => test.status === 'failed')
    for (const test of failures) problems.push(`${shortPath(file.name)}: ${test.fullName}`)
    if (file.status === 'failed' && failures.length === 0)
      problems.push(`${shortPath(file.name)}: did not run`)
  }
  if (status !== 0 && problems.length === before)
    problems.push(`vitest ended with exit code ${status}, see above`)
}

/** Runs a tool's own script with this Node, since the shims in .bin differ between systems. */
function run(tool, args, onFailure) {
  const home = join(root, 'node_modules', tool.package)
  const { bin } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'))
  const script = join(home, typeof bin === 'string' ? bin : bin[tool.bin])
  const stdio = onFailure ? ['ignore', 'pipe', 'pipe'] : ['ignore', 'inherit', 'inherit']
  const result = spawnSync(process.execPath, [script, ...args], {
    cwd: root,
    stdio,
    encoding: 'utf8',
    maxBuffer: 1e8,
  })
  if (result.status !== 0) onFailure?.(`${result.stdout}${result.stderr}`)
  return result
}

function summarize() {
  if (problems.length > 0) console.log(`\nFailed:\n${problems.map((problem) => `  ${problem}`).join('\n')}`)
  console.log(skipped > 0 ? `\n${skipped} skipped` : '')
  console.log(`${passed} passed, ${problems.length} failed`)
  process.exitCode = problems.length > 0 ? 1 : 0
}

function shortPath(path) {
  return path.replaceAll('\\', '/').split('/tests/').at(-1)
}
