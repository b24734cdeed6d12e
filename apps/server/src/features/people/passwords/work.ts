// What runs in the worker thread that judges passwords: no list and no password leaves this machine.
import { ZxcvbnFactory } from '@zxcvbn-ts/core';
import { adjacencyGraphs, dictionary as common } from '@zxcvbn-ts/language-common';
import { dictionary as english } from '@zxcvbn-ts/language-en';
import { dictionary as spanish } from '@zxcvbn-ts/language-es-es';
import { answerQuestions } from '../../../thread/answering.ts';

// Fewer ways of reading 3 as e and the like than it tries by itself: with all of them a single password took seconds.
const estimator = new ZxcvbnFactory({ dictionary: { ...common, ...english, ...spanish }, graphs: adjacencyGraphs, l33tMaxSubstitutions: 8 });
answerQuestions((password: string): number => estimator.check(password).score);
