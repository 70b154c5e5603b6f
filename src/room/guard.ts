import type {HttpBindings} from '@hono/node-server';
import type {MiddlewareHandler} from 'hono';

const policy =
	"default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

/**
 * Lets in only requests made to this machine by name and by the room's own page, so that no other web page can
 * reach the room, and says what the page may load.
 */
export const guardOrigin: MiddlewareHandler<{Bindings: HttpBindings}> = async (ctx, next) => {
	const port = ctx.env.incoming.socket.localPort;
	const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
	const host = ctx.req.header('host') ?? '';
	const origin = ctx.req.header('origin');
	const isOwn = origin === undefined || origin === `http://${host}`;
	if (!hosts.includes(host) || !isOwn) {
		return ctx.text(`Expected a request to ${hosts.join(' or ')} from the room's own page`, 403);
	}
	await next();
	ctx.header('content-security-policy', policy);
	ctx.header('x-content-type-options', 'nosniff');
	ctx.header('referrer-policy', 'no-referrer');
	ctx.header('cross-origin-resource-policy', 'same-origin');
	return undefined;
};
