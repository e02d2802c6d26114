/** A file that lies ready in memory. */
export interface ReadyFile {
  readonly name: string;
  readonly type: string;
  readonly parts: readonly BlobPart[];
}

/** `tap-again`: the phone lets nothing be shared so long after a tap; the person has to tap once more. */
export type FileSaved = 'saved' | 'tap-again' | 'cancelled';

/** Installed on an iPhone, where a download opens a view that nothing leads back from (WebKit bug 236943). */
const isInstalledOnIos = (): boolean => 'standalone' in navigator && navigator.standalone === true;

/** Whether this phone has a share sheet that takes files of this kind. */
export function canShare(name: string, type: string): boolean {
  if (typeof navigator.canShare !== 'function') return false;
  return navigator.canShare({ files: [new File([], name, { type })] });
}

/** Hands a file to the person: a download or, installed on an iPhone, the share sheet. */
export async function saveFile(file: ReadyFile): Promise<FileSaved> {
  const asShare = isInstalledOnIos() && typeof navigator.share === 'function';
  return asShare ? shareFile(file) : download(file);
}

/** Hands a file to the share sheet; what it does not take becomes a download. */
export async function shareFile(file: ReadyFile): Promise<FileSaved> {
  try {
    const shared = new File([...file.parts], file.name, { type: file.type });
    await navigator.share({ files: [shared] });
    return 'saved';
  } catch (error) {
    const name = error instanceof Error ? error.name : '';
    if (name === 'AbortError') return 'cancelled';
    return name === 'NotAllowedError' ? 'tap-again' : download(file);
  }
}

/** An address is given up only long after the browser has begun to read from it. */
const keptMs = 60_000;

function download({ name, type, parts }: ReadyFile): FileSaved {
  const address = URL.createObjectURL(new Blob([...parts], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), keptMs);
  return 'saved';
}

/** A name as a file name: letters and digits of any script, the rest as strokes. */
export const fileNameOf = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
