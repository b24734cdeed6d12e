// What runs in the worker thread that judges passwords: no list and no password leaves this machine. It is no TypeScript, so that it starts
// without a loader.
import { parentPort } from 'node:worker_threads';
import { ZxcvbnFactory } from '@zxcvbn-ts/core';
import { adjacencyGraphs, dictionary as common } from '@zxcvbn-ts/language-common';
import { dictionary as english } from '@zxcvbn-ts/language-en';
import { dictionary as spanish } from '@zxcvbn-ts/language-es-es';

// Fewer ways of reading 3 as e and the like than it tries by itself: with all of them a single password took seconds.
const estimator = new ZxcvbnFactory({
  dictionary: { ...common, ...english, ...spanish },
  graphs: adjacencyGraphs,
  l33tMaxSubstitutions: 8,
});
parentPort?.on('message', ({ question }) =>
  parentPort?.postMessage({ answer: estimator.check(question).score, error: null }),
);
