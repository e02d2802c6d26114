import { unreachable } from '../../core/result.ts';

/** Why a file did not become a photo. */
export type PhotoFault =
  | {
      readonly kind:
        | 'unreadable' // the phone gave no bytes
        | 'not-an-image' // by its content, whatever its name says
        | 'truncated' // it breaks off before its end
        | 'heic' // in a form that this browser cannot open
        | 'undecodable' // an image by its head, but the browser refuses it
        | 'blank' // nothing was drawn
        | 'failed' // the phone gave up, as when memory is short
        | 'cancelled'; // the person went on
    }
  | { readonly kind: 'too-many-pixels'; readonly megapixels: number; readonly most: number }
  | { readonly kind: 'file-too-large'; readonly megabytes: number; readonly most: number };

/** One sentence on what is wrong and how to mend it. */
export function photoFaultLine(fault: PhotoFault): string {
  switch (fault.kind) {
    case 'unreadable':
      return 'The phone could not read this photo. Take it with the camera instead, or copy it to this phone first.';
    case 'not-an-image':
      return 'This file is not a photo. Choose a JPEG, PNG or WebP picture.';
    case 'truncated':
      return 'The photo breaks off before its end. Take it again, or have it sent again.';
    case 'heic':
      return 'This browser cannot open HEIC photos. Take it with the camera from here, or save it as JPEG and choose that.';
    case 'undecodable':
      return 'The photo is damaged and cannot be opened. Take it again, or choose another one.';
    case 'blank':
      return 'Nothing is to be seen in this photo. Take it again; if that does not help, close other apps first.';
    case 'failed':
      return 'The phone could not make the photo ready. Close other apps, then take or choose it again.';
    case 'cancelled':
      return 'The photo was not taken over.';
    case 'too-many-pixels':
      return `The photo has ${fault.megapixels} megapixels, and ${fault.most} are the most that a phone can open safely. Set the camera to a smaller size; 12 are plenty.`;
    case 'file-too-large':
      return `The file has ${fault.megabytes} MB, and ${fault.most} are the most for a photo. Choose a smaller one, or take it with the camera.`;
    default:
      return unreachable(fault);
  }
}
