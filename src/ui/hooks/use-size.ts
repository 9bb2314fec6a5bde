import { useStdout } from 'ink'
import { useEffect, useState } from 'react'
import type { Size } from '../layout.ts'

/** The size of the terminal, kept up with it. */
export function useSize(): Size {
  const { stdout } = useStdout()
  const [size, setSize] = useState(() => sizeOf(stdout))
  useEffect(() => {
    const measure = () => setSize(sizeOf(stdout))
    stdout.on('resize', measure)
    return () => {
      stdout.off('resize', measure)
    }
  }, [stdout])
  return size
}

function sizeOf({ columns, rows }: { columns?: number; rows?: number }): Size {
  return { width: columns || 80, height: rows || 24 }
}
