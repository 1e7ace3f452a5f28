import { Hono } from 'hono';
import type { MailCatcher } from '../../service/mail-catcher.ts';
import type { PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { MailListPage, MailPage } from './mail-pages.tsx';

/** Caught mail: the list, one mail, its HTML part for a frame without rights, its files and its bytes. */
export function mailRoutes(catcher: Pick<MailCatcher, 'list' | 'get'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  app.get('/mail', async (context) =>
    context.html(<MailListPage mails={await catcher.list()} frame={frameFor(context)} />),
  );
  app.get('/mail/:id', async (context) => {
    const mail = await catcher.get(context.req.param('id'));
    return mail ? context.html(<MailPage mail={mail} frame={frameFor(context)} />) : context.notFound();
  });
  app.get('/mail/:id/html', async (context) => {
    const mail = await catcher.get(context.req.param('id'));
    return mail?.html ? context.html(mail.html) : context.notFound();
  });
  app.get('/mail/:id/raw', async (context) => {
    const mail = await catcher.get(context.req.param('id'));
    if (!mail) return context.notFound();
    return context.body(new Uint8Array(mail.raw), 200, {
      'Content-Type': 'message/rfc822',
      'Content-Disposition': `attachment; filename="${encodeURIComponent(mail.id)}.eml"`,
    });
  });
  app.get('/mail/:id/files/:index{[0-9]+}', async (context) => {
    const mail = await catcher.get(context.req.param('id'));
    const file = mail?.files[Number(context.req.param('index'))];
    if (!file) return context.notFound();
    return context.body(new Uint8Array(file.content), 200, {
      'Content-Type': 'application/octet-stream',
      'Content-Disposition': `attachment; filename*=UTF-8''${encodeURIComponent(file.name)}`,
    });
  });
  return app;
}
