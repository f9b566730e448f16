/* SPDX-License-Identifier: MIT */
/* Random numbers that anybody can have again: SplitMix64 (Steele, Lea, Flood, "Fast splittable
 * pseudorandom number generators", OOPSLA 2014; the constants are those of Vigna's splitmix64.c,
 * which is in the public domain). Its n-th number is a mixing of seed + n x gamma, so any number of
 * any stream can be had by itself, in any order. */
#ifndef DOORCOST_CHANCE_RANDOM_H
#define DOORCOST_CHANCE_RANDOM_H

#include <stdint.h>

/* Number n, from 0 on, of the stream of that seed: 64 bits, each as likely 0 as 1. */
uint64_t random_at(uint64_t seed, uint64_t n);

/* The seed of a stream of its own for each name: what is drawn for one name stays as it is when
 * others come and go. FNV-1a over the bytes of the name, mixed with the seed. */
uint64_t random_stream(uint64_t seed, const char *name);

/* 64 bits as a number above 0 and below 1, in steps of 2^-52. */
double random_part(uint64_t bits);

#endif
