#include "read/job.h"
#include <locale.h>
int main(int argc, char **argv) { struct job job; struct rates rates; struct problems p; setlocale(LC_CTYPE,""); problems_init(&p);
 bool ok = job_read(&job,&rates,argc>1?argv[1]:"job.ini",&p); problems_print(&p, stdout, false);
 printf("ok %d rows %zu lumber %zu style0 index %d wood %d price %ld/%d [%ld %ld] overlay %ld wet %ld loss %ld.%d rows2 leaves %ld coats %zu\n", ok, job.row_count, rates.lumber_count, job.row_count?job.rows[0].make.style.index:-9, rates.lumber_count?rates.lumber[0].wood:-9,
  rates.lumber_count?rates.lumber[0].price.amount:0, rates.lumber_count?rates.lumber[0].price.decimals:0,rates.lumber_count?rates.lumber[0].price.low:0,rates.lumber_count?rates.lumber[0].price.high:0, job.row_count?job.rows[0].make.overlay[3].amount:0, rates.coating_count?rates.coatings[0].wet_film.amount:0, rates.spray_count?rates.sprays[0].fixed_loss.amount:0, rates.spray_count?rates.sprays[0].fixed_loss.decimals:0, job.row_count>1?job.rows[1].leaves.amount:0, rates.finish_count?rates.finishes[0].coat_count:0);
 problems_clear(&p); job_clear(&job); rates_clear(&rates); return 0;}
