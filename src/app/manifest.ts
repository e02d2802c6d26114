import { inboxField, inboxPath } from '../protocol/inbox.ts';
import { shellWords } from '../words/shell.ts';

const fileTypes = ['application/zip', '.zip', 'application/json', '.json'];

/** What an operating system reads when it installs the app (W3C Web Application Manifest). */
export const manifest = {
  id: '/',
  name: shellWords.name,
  short_name: shellWords.name,
  description: shellWords.description,
  lang: shellWords.lang,
  dir: 'ltr',
  start_url: '/',
  scope: '/',
  display: 'standalone',
  background_color: '#faf6ee',
  theme_color: '#faf6ee',
  categories: ['business', 'productivity', 'utilities'],
  prefer_related_applications: false,
  // What the person shares with the app, or opens with it, is shown and asked about before it is taken in.
  share_target: {
    action: inboxPath,
    method: 'POST',
    enctype: 'multipart/form-data',
    params: { files: [{ name: inboxField, accept: fileTypes }] },
  },
  file_handlers: [
    {
      action: inboxPath,
      accept: { 'application/zip': ['.zip'], 'application/json': ['.json'] },
      launch_type: 'single-client',
    },
  ],
  launch_handler: { client_mode: ['navigate-existing', 'auto'] },
  icons: [
    { src: '/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
    { src: '/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
    { src: '/icon-maskable-192.png', sizes: '192x192', type: 'image/png', purpose: 'maskable' },
    { src: '/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
  ],
  screenshots: [
    {
      src: '/screenshots/narrow.png',
      sizes: '720x1480',
      type: 'image/png',
      form_factor: 'narrow',
      label: shellWords.narrowScreenshot,
    },
    {
      src: '/screenshots/wide.png',
      sizes: '1280x800',
      type: 'image/png',
      form_factor: 'wide',
      label: shellWords.wideScreenshot,
    },
  ],
};
