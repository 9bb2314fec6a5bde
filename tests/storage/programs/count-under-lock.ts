import { existsSync, readFileSync, writeFileSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { withLock } from '../../../src/storage/lock/lock.ts'

// Waits for a file `go`, then adds 1 to the number in a file, `times` times, each time under the lock, and says so.
// At the end of a turn, still having the lock, it can make trouble: it `dies` in the last one, or `abandons` each
// time, leaving the lock in a dead process's name.
const [folder = '', times = '', manner = '', deadPid = ''] = process.argv.slice(2)
const lock = join(folder, 'lock')
const counter = join(folder, 'counter')

writeSync(1, 'ready\n')
while (!existsSync(join(folder, 'go'))) wait(1)
for (let turn = 1; turn <= Number(times); turn += 1) {
  withLock(lock, { limit: 15_000 }, () => {
    const count = Number(readFileSync(counter, 'utf8'))
    wait(0.3)
    writeFileSync(counter, `${count + 1}`)
    writeSync(1, `${turn}\n`)
    if (manner === 'dies' && turn === Number(times)) process.kill(process.pid, 'SIGKILL')
    if (manner === 'abandons') abandon(turn)
  })
}

function wait(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds)
}

function abandon(turn: number): void {
  const holder = JSON.parse(readFileSync(lock, 'utf8'))
  writeFileSync(lock, JSON.stringify({ ...holder, pid: Number(deadPid), token: `${process.pid}-${turn}` }))
}
