/** Stands in until files can be read. */
export function ImportButton({ label }: { label: string }) {
  return <span hidden>{label}</span>;
}
