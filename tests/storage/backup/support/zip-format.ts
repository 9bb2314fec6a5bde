import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib'

// Written after the published description of the format (APPNOTE.TXT 6.3.10: 4.3.7 local header, 4.3.12 central
// directory, 4.3.16 its end), so that archives are judged, and bad ones made, without the libraries of the program.

/** One file as a central directory tells of it, and its bytes. */
export interface ZipFileRead {
  name: string
  method: number
  flags: number
  crc: number
  size: number
  bytes: Buffer
}

/** Reads an archive whole. Throws where a signature, a length or a checksum is not what the format asks for. */
export function readZip(archive: Buffer): ZipFileRead[] {
  const end = archive.length - END_BYTES
  expectSignature(archive, end, END)
  const count = archive.readUInt16LE(end + 10)
  let at = archive.readUInt32LE(end + 16)
  const files: ZipFileRead[] = []
  for (let index = 0; index < count; index += 1) {
    expectSignature(archive, at, CENTRAL)
    const [nameBytes, extraBytes, commentBytes] = [28, 30, 32].map((field) =>
      archive.readUInt16LE(at + field),
    )
    const name = archive.toString('utf8', at + 46, at + 46 + (nameBytes ?? 0))
    files.push(readFile(archive, at, name))
    at += 46 + (nameBytes ?? 0) + (extraBytes ?? 0) + (commentBytes ?? 0)
  }
  if (at !== end) throw new Error('the central directory does not end where its end begins')
  return files
}

function readFile(archive: Buffer, at: number, name: string): ZipFileRead {
  const [flags, method] = [archive.readUInt16LE(at + 8), archive.readUInt16LE(at + 10)]
  const [crc, packed, size, local] = [16, 20, 24, 42].map((field) => archive.readUInt32LE(at + field)) as [
    number,
    number,
    number,
    number,
  ]
  expectSignature(archive, local, LOCAL)
  const start = local + 30 + archive.readUInt16LE(local + 26) + archive.readUInt16LE(local + 28)
  const raw = archive.subarray(start, start + packed)
  const bytes = method === 8 ? inflateRawSync(raw) : raw
  if (bytes.length !== size || crc32(bytes) !== crc) throw new Error(`${name} is not what its header says`)
  return { name, method, flags, crc, size, bytes: Buffer.from(bytes) }
}

/** A file to put into an archive, with whatever its headers are to say instead of what is so. */
export interface ZipFileMade {
  name: string | Buffer
  bytes: Buffer
  method?: 0 | 8
  flags?: number
  /** The mode of the file, as a Unix system writes it. */
  mode?: number
  crc?: number
  size?: number
  packedSize?: number
  /** Lies where the file of that index lies. */
  over?: number
  method2?: number
}

/** Makes an archive of files as they are told, right or wrong. */
export function makeZip(files: readonly ZipFileMade[]): Buffer {
  const parts: Buffer[] = []
  const central: Buffer[] = []
  const starts: number[] = []
  let at = 0
  for (const file of files) {
    const { bytes, method = 0, flags = 0x800, mode = 0o100600 } = file
    const name = Buffer.from(file.name)
    const packed = method === 8 ? deflateRawSync(bytes) : bytes
    const facts = {
      crc: file.crc ?? crc32(bytes),
      packed: file.packedSize ?? packed.length,
      size: file.size ?? bytes.length,
    }
    const start = file.over === undefined ? at : (starts[file.over] ?? 0)
    starts.push(start)
    if (file.over === undefined) {
      const header = Buffer.alloc(30)
      header.writeUInt32LE(LOCAL, 0)
      writeFacts(header, 4, { flags, method: file.method2 ?? method, ...facts, nameBytes: name.length })
      parts.push(header, name, packed)
      at += header.length + name.length + packed.length
    }
    const record = Buffer.alloc(46)
    record.writeUInt32LE(CENTRAL, 0)
    record.writeUInt16LE((3 << 8) | 20, 4)
    writeFacts(record, 6, { flags, method: file.method2 ?? method, ...facts, nameBytes: name.length })
    record.writeUInt32LE((mode << 16) >>> 0, 38)
    record.writeUInt32LE(start, 42)
    central.push(record, name)
  }
  const directory = Buffer.concat(central)
  const end = Buffer.alloc(END_BYTES)
  end.writeUInt32LE(END, 0)
  end.writeUInt16LE(files.length, 8)
  end.writeUInt16LE(files.length, 10)
  end.writeUInt32LE(directory.length, 12)
  end.writeUInt32LE(at, 16)
  return Buffer.concat([...parts, directory, end])
}

interface Facts {
  flags: number
  method: number
  crc: number
  packed: number
  size: number
  nameBytes: number
}

/** From "version needed" on, both kinds of header say the same. */
function writeFacts(
  header: Buffer,
  at: number,
  { flags, method, crc, packed, size, nameBytes }: Facts,
): void {
  header.writeUInt16LE(20, at)
  header.writeUInt16LE(flags, at + 2)
  header.writeUInt16LE(method, at + 4)
  header.writeUInt32LE(crc >>> 0, at + 10)
  header.writeUInt32LE(packed, at + 14)
  header.writeUInt32LE(size, at + 18)
  header.writeUInt16LE(nameBytes, at + 22)
}

function expectSignature(archive: Buffer, at: number, signature: number): void {
  if (archive.readUInt32LE(at) !== signature) throw new Error(`no ${signature.toString(16)} at ${at}`)
}

const LOCAL = 0x04034b50
const CENTRAL = 0x02014b50
const END = 0x06054b50
const END_BYTES = 22
