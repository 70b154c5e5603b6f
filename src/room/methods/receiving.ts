import {z} from 'zod';
import {flagField, jsonField, numberField} from '../body.ts';
import {readSetting, writeSetting} from '../core.ts';
import * as limits from '../limits.ts';
import {badRequest} from '../refusal.ts';
import {dropAllUpdates, waitingCount} from '../updates.ts';
import type {Call} from './call.ts';
import {parameters} from './call.ts';

const allowedField = jsonField(z.array(z.string())).optional();
const pollSchema = z.object({
	offset: numberField.default(0),
	limit: numberField.default(limits.updatesMax),
	timeout: numberField.default(0),
	allowed_updates: allowedField,
});
const hookSchema = z.object({
	url: z.string().default(''),
	secret_token: z.string().optional(),
	max_connections: numberField.int().min(1).max(100).default(40),
	allowed_updates: allowedField,
	drop_pending_updates: flagField.default(false),
});
const dropSchema = z.object({drop_pending_updates: flagField.default(false)});

/** Hands out the updates that wait, or waits for the first. */
export function getUpdates(call: Call): Promise<readonly unknown[]> {
	const fields = parameters(call, pollSchema);
	return call.polling.take({
		offset: fields.offset,
		limit: Math.min(fields.limit, limits.updatesMax),
		timeoutS: Math.max(0, fields.timeout),
		allowed: fields.allowed_updates,
		hangUp: call.hangUp,
	});
}

/** Has updates sent to an address; an empty one ends that. Plain HTTP is allowed on this machine only. */
export function setWebhook(call: Call): true {
	const fields = parameters(call, hookSchema);
	if (fields.secret_token !== undefined && !limits.webhookSecret.test(fields.secret_token)) {
		throw badRequest('secret token contains unallowed characters');
	}
	if (fields.url !== '' && !isAllowedAddress(fields.url)) {
		throw badRequest('bad webhook: An HTTPS URL must be provided for webhook');
	}
	if (fields.drop_pending_updates) dropAllUpdates(call.core);
	if (fields.allowed_updates !== undefined)
		writeSetting(call.core, 'allowed_updates', fields.allowed_updates);
	const {url, secret_token: secret, max_connections: connections} = fields;
	call.webhook.set(url === '' ? undefined : {url, secret, connections});
	if (url !== '') call.polling.end('Conflict: terminated by setWebhook request');
	return true;
}

/** Ends delivery to an address, so that polling works again. */
export function deleteWebhook(call: Call): true {
	if (parameters(call, dropSchema).drop_pending_updates) dropAllUpdates(call.core);
	call.webhook.set(undefined);
	return true;
}

/** How delivery is going. */
export function getWebhookInfo(call: Call): unknown {
	const setting = call.webhook.setting();
	const error = call.webhook.lastError();
	const trouble =
		error === undefined
			? {}
			: {last_error_date: Math.floor(error.at / 1000), last_error_message: error.message};
	const allowed = readSetting(call.core, 'allowed_updates', z.array(z.string()));
	return {
		url: setting?.url ?? '',
		has_custom_certificate: false,
		pending_update_count: waitingCount(call.core),
		...(setting === undefined ? {} : {max_connections: setting.connections}),
		...(allowed === undefined ? {} : {allowed_updates: allowed}),
		...trouble,
	};
}

function isAllowedAddress(url: string): boolean {
	if (!URL.canParse(url)) return false;
	const {protocol, hostname} = new URL(url);
	return protocol === 'https:' || (protocol === 'http:' && ['127.0.0.1', 'localhost'].includes(hostname));
}
