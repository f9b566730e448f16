/* SPDX-License-Identifier: MIT */
/* ISO 4217, without funds, metals and test codes: as Debian's iso-codes 4.15 has them, with which a
 * test compares. */
#include "read/key/currency.h"

#include "base/array.h"
#include "base/text.h"

#include <string.h>

static const char *const codes[] = {
    "AED", "AFN", "ALL", "AMD", "ANG", "AOA", "ARS", "AUD", "AWG", "AZN", "BAM", "BBD", "BDT",
    "BGN", "BHD", "BIF", "BMD", "BND", "BOB", "BRL", "BSD", "BTN", "BWP", "BYN", "BZD", "CAD",
    "CDF", "CHF", "CLP", "CNY", "COP", "CRC", "CUC", "CUP", "CVE", "CZK", "DJF", "DKK", "DOP",
    "DZD", "EGP", "ERN", "ETB", "EUR", "FJD", "FKP", "GBP", "GEL", "GHS", "GIP", "GMD", "GNF",
    "GTQ", "GYD", "HKD", "HNL", "HRK", "HTG", "HUF", "IDR", "ILS", "INR", "IQD", "IRR", "ISK",
    "JMD", "JOD", "JPY", "KES", "KGS", "KHR", "KMF", "KPW", "KRW", "KWD", "KYD", "KZT", "LAK",
    "LBP", "LKR", "LRD", "LSL", "LYD", "MAD", "MDL", "MGA", "MKD", "MMK", "MNT", "MOP", "MRU",
    "MUR", "MVR", "MWK", "MXN", "MYR", "MZN", "NAD", "NGN", "NIO", "NOK", "NPR", "NZD", "OMR",
    "PAB", "PEN", "PGK", "PHP", "PKR", "PLN", "PYG", "QAR", "RON", "RSD", "RUB", "RWF", "SAR",
    "SBD", "SCR", "SDG", "SEK", "SGD", "SHP", "SLE", "SLL", "SOS", "SRD", "SSP", "STN", "SVC",
    "SYP", "SZL", "THB", "TJS", "TMT", "TND", "TOP", "TRY", "TTD", "TWD", "TZS", "UAH", "UGX",
    "USD", "UYU", "UZS", "VED", "VES", "VND", "VUV", "WST", "XAF", "XCD", "XOF", "XPF", "YER",
    "ZAR", "ZMW", "ZWL",
};

/* ISO 4217, minor units: the currencies that have no hundredths. Read from OpenJDK 17.0.15
 * (java.util.Currency), which follows the standard. */
static const char *const whole[] = {"BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW",
                                    "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"};
static const char *const thousandths[] = {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"};

static bool is_among(const char *code, const char *const *list, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (strcmp(list[i], code) == 0) {
            return true;
        }
    }
    return false;
}

bool currency_known(const char *code) {
    return is_among(code, codes, COUNT_OF(codes));
}

uint8_t currency_decimals(const char *code) {
    if (is_among(code, whole, COUNT_OF(whole))) {
        return 0;
    }
    return is_among(code, thousandths, COUNT_OF(thousandths)) ? 3 : 2;
}

/* What people write instead of a code, where it means one only. */
static const struct {
    const char *written, *code;
} signs[] = {{"\xE2\x82\xAC", "EUR"}, {"\xC2\xA3", "GBP"}, {"euro", "EUR"}, {"euros", "EUR"}};

const char *currency_meant(const char *text) {
    for (size_t i = 0; i < COUNT_OF(signs); i++) {
        if (text_same(signs[i].written, text)) {
            return signs[i].code;
        }
    }
    return text_nearest(text, codes, COUNT_OF(codes));
}
