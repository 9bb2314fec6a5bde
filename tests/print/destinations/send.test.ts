import { execFileSync } from 'node:child_process'
import {
  closeSync,
  constants,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { createServer, type Server } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { toDevice } from '../../../src/print/destinations/device.ts'
import { toFreeFile } from '../../../src/print/destinations/free-file.ts'
import { send } from '../../../src/print/destinations/send.ts'
import { toSocket } from '../../../src/print/destinations/socket.ts'

const bytes = new TextEncoder().encode('a label, and nothing but a label\n'.repeat(20_000))

describe('a file', () => {
  test('is written whole, for its owner alone, and leaves nothing beside it', async () => {
    const cwd = folder()
    const sent = await send(bytes, { target: 'file', path: 'out/bag-3.pdf' }, { cwd })
    expect(sent).toEqual({ ok: true, where: join(cwd, 'out', 'bag-3.pdf') })
    expect(readFileSync(join(cwd, 'out', 'bag-3.pdf')).equals(bytes)).toBe(true)
    expect(readdirSync(join(cwd, 'out'))).toEqual(['bag-3.pdf'])
    if (process.platform !== 'win32') expect(statSync(join(cwd, 'out', 'bag-3.pdf')).mode & 0o077).toBe(0)
  })

  test('that is there already is never written over, also not through a link', async () => {
    const cwd = folder()
    writeFileSync(join(cwd, 'notes.pdf'), 'mine')
    symlinkSync(join(cwd, 'notes.pdf'), join(cwd, 'link.pdf'))
    for (const path of ['notes.pdf', 'link.pdf']) {
      expect(await send(bytes, { target: 'file', path }, { cwd })).toMatchObject({
        ok: false,
        code: 'exists',
      })
    }
    expect(readFileSync(join(cwd, 'notes.pdf'), 'utf8')).toBe('mine')
    expect(readdirSync(cwd).sort()).toEqual(['link.pdf', 'notes.pdf'])
  })

  test('without a name gets the first that is free', async () => {
    const cwd = folder()
    const about = { folder: join(cwd, 'out'), name: '017-plan', ending: 'pdf' }
    await toFreeFile(bytes, about)
    await toFreeFile(bytes, about)
    await toFreeFile(bytes, about)
    expect(readdirSync(join(cwd, 'out')).sort()).toEqual(['017-plan-2.pdf', '017-plan-3.pdf', '017-plan.pdf'])
  })

  test('where none can be is a failure that says so', async () => {
    const cwd = folder()
    writeFileSync(join(cwd, 'plain'), '')
    const sent = await send(bytes, { target: 'file', path: 'plain/bag.pdf' }, { cwd })
    expect(sent).toMatchObject({ ok: false, partly: false })
    expect(sent.ok ? '' : sent.code).toMatch(/^(ENOTDIR|EEXIST|ENOENT)$/)
  })
})

describe('a device', () => {
  test('is not a plain file, a folder, or a name that does not exist', async () => {
    const cwd = folder()
    writeFileSync(join(cwd, 'notes.txt'), 'mine')
    for (const path of ['notes.txt', '.']) {
      const sent = await send(bytes, { target: 'device', path }, { cwd })
      expect(sent).toMatchObject({ ok: false, code: 'no-device', partly: false })
    }
    expect(await send(bytes, { target: 'device', path: 'lp9' }, { cwd })).toMatchObject({ code: 'ENOENT' })
    expect(readFileSync(join(cwd, 'notes.txt'), 'utf8')).toBe('mine')
    expect(readdirSync(cwd)).toEqual(['notes.txt'])
  })

  test.skipIf(process.platform === 'win32')('gets every byte, as a reader of a pipe sees them', async () => {
    const cwd = folder()
    execFileSync('mkfifo', [join(cwd, 'printer')])
    const reading = import('node:fs/promises').then(({ readFile }) => readFile(join(cwd, 'printer')))
    expect(await send(bytes, { target: 'device', path: 'printer' }, { cwd })).toMatchObject({ ok: true })
    expect((await reading).equals(bytes)).toBe(true)
  })
})

describe('a device that takes no more', () => {
  test.skipIf(process.platform === 'win32')('or that nobody reads is given up', async () => {
    const cwd = folder()
    const pipe = join(cwd, 'printer')
    execFileSync('mkfifo', [pipe])
    expect(await toDevice(bytes, pipe, cwd, { patience: 100 })).toMatchObject({
      ok: false,
      code: 'no-answer',
      partly: false,
    })
    // Open for both, so that the pipe has a reader that never reads.
    const reader = openSync(pipe, constants.O_RDWR | constants.O_NONBLOCK)
    onTestFinished(() => closeSync(reader))
    expect(await toDevice(bytes, pipe, cwd, { patience: 100 })).toMatchObject({
      ok: false,
      code: 'no-answer',
      partly: true,
    })
  })

  test.skipIf(!existsSync('/dev/full'))('or is full says so, with nothing sent', async () => {
    expect(await toDevice(bytes, '/dev/full', '.')).toMatchObject({
      ok: false,
      code: 'ENOSPC',
      partly: false,
    })
  })
})

describe('a socket', () => {
  test('gets every byte, and the end', async () => {
    const { port, received } = await printer()
    const sent = await send(bytes, { target: 'tcp', host: '127.0.0.1', port }, { cwd: '.' })
    expect(sent).toEqual({ ok: true, where: `127.0.0.1:${port}` })
    expect((await received).equals(bytes)).toBe(true)
  })

  test('that nobody listens at refuses, with nothing printed', async () => {
    const { port, server } = await printer()
    await new Promise((resolve) => server.close(resolve))
    const sent = await send(bytes, { target: 'tcp', host: '127.0.0.1', port }, { cwd: '.' })
    expect(sent).toMatchObject({ ok: false, code: 'ECONNREFUSED', partly: false })
  })

  test('that takes nothing is given up, and part of it may be printed', async () => {
    const { port } = await printer((socket) => socket.pause())
    const much = new Uint8Array(64 * 1024 * 1024)
    const sent = await toSocket(much, { host: '127.0.0.1', port }, { patience: 300 })
    expect(sent).toMatchObject({ ok: false, code: 'no-answer', partly: true })
  })

  test('that talks and takes nothing is given up as well', async () => {
    const { port } = await printer((socket) => {
      socket.pause()
      const talking = setInterval(() => socket.write('ready\n'), 50)
      socket.on('close', () => clearInterval(talking))
      onTestFinished(() => void socket.destroy())
    })
    const much = new Uint8Array(64 * 1024 * 1024)
    const sent = await toSocket(much, { host: '127.0.0.1', port }, { patience: 300 })
    expect(sent).toMatchObject({ ok: false, code: 'no-answer', partly: true })
  })

  test('that breaks off in the middle is a failure', async () => {
    const { port } = await printer((socket) => socket.once('data', () => socket.resetAndDestroy()))
    const much = new Uint8Array(64 * 1024 * 1024)
    const sent = await toSocket(much, { host: '127.0.0.1', port })
    expect(sent).toMatchObject({ ok: false, partly: true })
  })
})

function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'putback-print-'))
  onTestFinished(() => rmSync(path, { recursive: true, force: true }))
  return path
}

/** A printer on the loopback. `received` comes when the line ends. */
async function printer(
  behave: (socket: import('node:net').Socket) => void = () => undefined,
): Promise<{ server: Server; port: number; received: Promise<Buffer> }> {
  const server = createServer()
  const received = new Promise<Buffer>((resolve) => {
    server.on('connection', (socket) => {
      const parts: Buffer[] = []
      socket.on('data', (part) => parts.push(part))
      socket.on('end', () => resolve(Buffer.concat(parts)))
      socket.on('error', () => undefined)
      behave(socket)
    })
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => void server.close())
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('no port')
  return { server, port: address.port, received }
}
