import type { ArchiveProgress } from '../../storage/backup/read-archive.ts'

/** Tells how far an archive is: `blue-twin: reading back 3 of 40`. */
export function archiveProgress(
  job: string,
  tell: (progress: string) => void,
  reading = 'reading back',
): (progress: ArchiveProgress) => void {
  return ({ doing, file, of }) =>
    tell(`${job}: ${doing === 'reading' ? reading : 'writing'} ${file} of ${of}`)
}
