/* SPDX-License-Identifier: MIT */
#include "chance/random.h"

uint64_t random_at(uint64_t seed, uint64_t n) {
    uint64_t z = seed + (n + 1) * UINT64_C(0x9E3779B97F4A7C15);
    z = (z ^ z >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ z >> 27) * UINT64_C(0x94D049BB133111EB);
    return z ^ z >> 31;
}

uint64_t random_stream(uint64_t seed, const char *name) {
    uint64_t hash = UINT64_C(0xCBF29CE484222325);
    for (; *name != '\0'; name++) {
        hash = (hash ^ (unsigned char)*name) * UINT64_C(0x100000001B3);
    }
    return random_at(random_at(seed, 0) ^ hash, 0);
}

double random_part(uint64_t bits) {
    return ((double)(bits >> 12) + 0.5) * 0x1p-52; /* exact: 53 bits */
}
