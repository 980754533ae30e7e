/** The API as an OpenAPI 3.1 document (https://spec.openapis.org/oas/v3.1.1), made from the table of its endpoints. */
import { z } from 'zod';
import { perToken } from './allowance.ts';
import type { Endpoint } from './endpoint.ts';
import { endpoints } from './endpoints.ts';
import { problemSchema, type ProblemCode, problemCodes, statusOf } from './problem.ts';

type Json = Readonly<Record<string, unknown>>;
type Made = { readonly [name: string]: unknown } & { $defs?: Json };

/** As JSON Schema; what has a name goes among the components, once for all who name it. */
function schemaOf(schema: z.ZodType, io: 'input' | 'output', components: Record<string, unknown>) {
  const made = z.toJSONSchema(schema, {
    io,
    override: ({ jsonSchema }) => {
      // The format says the same, and can be read.
      if (jsonSchema.format !== undefined) delete jsonSchema.pattern;
    },
  }) as Made;
  const text = JSON.stringify(made).replaceAll('"#/$defs/', '"#/components/schemas/');
  const { $schema: _, $defs, ...rest } = JSON.parse(text) as Made;
  for (const [name, one] of Object.entries($defs ?? {})) {
    const { id: __, ...kept } = one as Json;
    components[name] = kept;
  }
  return rest;
}

const addressOf = (route: string): string => route.replace(/\[(\w+)\]/g, '{$1}');

function parametersOf({ path, query }: Endpoint, components: Record<string, unknown>) {
  const of = (taken: Endpoint['query'], place: 'path' | 'query') => {
    const { properties = {}, required = [] } = schemaOf(taken, 'input', components) as {
      properties?: Record<string, Json>;
      required?: readonly string[];
    };
    return Object.entries(properties).map(([name, { description, ...schema }]) => ({
      name,
      in: place,
      required: required.includes(name),
      ...(description === undefined ? {} : { description }),
      schema,
    }));
  };
  return [...of(path, 'path'), ...of(query, 'query')];
}

const always: readonly ProblemCode[] = ['NO_TOKEN', 'WRONG_SCOPE', 'TOO_OFTEN', 'FAULT', 'OUTAGE'];

/** The statuses with which an address may refuse. */
function refusalsOf({ path }: Endpoint): readonly number[] {
  const codes: readonly ProblemCode[] = [
    ...always,
    // A parameter that is not known is refused everywhere.
    'PARAMETERS_WRONG',
    ...(Object.keys(path.shape).length > 0 ? (['ABSENT'] as const) : []),
  ];
  return [...new Set(codes.map(statusOf))].toSorted((a, b) => a - b);
}

function operationOf(endpoint: Endpoint, components: Record<string, unknown>) {
  const { id, summary, scope, answer } = endpoint;
  const content = { 'application/json': { schema: schemaOf(answer, 'output', components) } };
  const refusals: readonly (readonly [string, Json])[] = refusalsOf(endpoint).map((status) => [
    String(status),
    { $ref: `#/components/responses/${status}` },
  ]);
  return {
    operationId: id,
    summary,
    description: `For tokens with the scope ${scope}.`,
    security: [{ token: [scope] }],
    parameters: parametersOf(endpoint, components),
    responses: {
      '200': { description: 'What was asked for.', content },
      ...Object.fromEntries<Json>(refusals),
    },
  };
}

function responses(components: Record<string, unknown>) {
  schemaOf(z.strictObject({ problem: problemSchema }), 'output', components);
  const of = (status: number) => ({
    description: problemCodes.filter((code) => statusOf(code) === status).join(', '),
    content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
  });
  return Object.fromEntries(
    [...new Set(problemCodes.map(statusOf))].map((status) => [String(status), of(status)]),
  );
}

export function openApi(table: readonly Endpoint[] = endpoints) {
  const schemas: Record<string, unknown> = {};
  const paths: Record<string, Record<string, unknown>> = {};
  for (const endpoint of table) {
    const operation = operationOf(endpoint, schemas);
    const address = addressOf(endpoint.route);
    paths[address] = { ...paths[address], [endpoint.method.toLowerCase()]: operation };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Underlap',
      version: '1',
      description:
        'What a company keeps in Underlap, for its other programs. The office makes a token with the ' +
        `scopes that a program needs. Each token may ask ${perToken.most} times in ${perToken.seconds} ` +
        'seconds of each server. Instants are UTC, days are days of the calendar.',
    },
    servers: [{ url: '/' }],
    paths,
    components: {
      schemas,
      responses: responses(schemas),
      securitySchemes: { token: { type: 'http', scheme: 'bearer' } },
    },
  };
}
