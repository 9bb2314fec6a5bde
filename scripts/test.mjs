// `npm test`: types, lint, unused code, then the tests; with arguments, vitest alone with these.
// The last line is always `N passed, N failed`: tests, plus one failure for each check that fails.
import { spawn } from 'node:child_process'
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
  // Beside each other: a check has one processor busy, and leaves the other to the tests.
  await Promise.all([...(vitestArgs.length === 0 ? checks.map(runCheck) : []), runVitest()])
} catch (error) {
  problems.push(error.message)
}
summarize()

/** Tells what it found in one piece. */
async function runCheck({ name, args, ...tool }) {
  const began = Date.now()
  const { status, output } = await finished(tool, args)
  if (status !== 0) process.stdout.write(output)
  console.log(
    `${status === 0 ? 'ok  ' : 'FAIL'} ${name} (${tool.bin}, ${((Date.now() - began) / 1000).toFixed(1)} s)`,
  )
  if (status !== 0) problems.push(`${name}: ${tool.bin} ${args.join(' ')} found something, see above`)
}

async function runVitest() {
  const folder = mkdtempSync(join(tmpdir(), 'putback-test-'))
  const report = join(folder, 'report.json')
  try {
    const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
    // A forgotten `.only` would hide every other test.
    if (vitestArgs.length === 0) args.push('--no-allowOnly')
    const { status } = await finished(
      { package: 'vitest', bin: 'vitest' },
      [...args, ...vitestArgs],
      'inherit',
    )
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

/** Runs a tool to its end. `to` is where its output goes: kept, or straight to the terminal. */
function finished(tool, args, to = 'pipe') {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [scriptOf(tool), ...args], { cwd: root, stdio: ['ignore', to, to] })
    let output = ''
    for (const stream of [child.stdout, child.stderr])
      stream?.setEncoding('utf8').on('data', (text) => {
        output += text
      })
    child.on('error', reject)
    child.on('close', (status) => resolve({ status, output }))
  })
}

/** A tool's own script, to be run with this Node: the shims in .bin differ between systems. */
function scriptOf(tool) {
  const home = join(root, 'node_modules', tool.package)
  const { bin } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'))
  return join(home, typeof bin === 'string' ? bin : bin[tool.bin])
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
