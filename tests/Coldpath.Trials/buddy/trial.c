/* The same functions as DiagramTrial, in the same order of operations, with Debian's BuDDy. One line a case:
   name, milliseconds (best of several runs, warm), nodes of the result, satisfying assignments. */
#include <bdd.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec * 1e3 + t.tv_nsec * 1e-6;
}

static void begin(int variables)
{
    bdd_init(1000000, 100000);
    bdd_setmaxincrease(1000000);
    bdd_setcacheratio(8);
    bdd_setvarnum(variables);
}

static bdd *made;

static void keep(bdd *slot, bdd value)
{
    bdd_addref(value);
    bdd_delref(*slot);
    *slot = value;
}

static bdd queens(int n)
{
    bdd board = bddtrue;
    for (int i = 0; i < n; i++)
    {
        bdd row = bddfalse;
        for (int j = 0; j < n; j++)
            keep(&row, bdd_or(row, bdd_ithvar(i * n + j)));
        keep(&board, bdd_and(board, row));
    }
    for (int i = 0; i < n; i++)
        for (int j = 0; j < n; j++)
        {
            bdd alone = bddtrue, here = bdd_ithvar(i * n + j);
            for (int k = 0; k < n; k++)
                for (int l = 0; l < n; l++)
                {
                    int same = k == i || l == j || k - i == l - j || k - i == j - l;
                    if ((k != i || l != j) && same)
                        keep(&alone, bdd_and(alone, bdd_imp(here, bdd_nithvar(k * n + l))));
                }
            keep(&board, bdd_and(board, alone));
        }
    return board;
}

/* Nodes column by column; a switch to the node below and to the node on the right. */
static bdd grid(int rows, int columns)
{
    int nodes = rows * columns, next = 0;
    made = calloc((size_t)nodes * nodes, sizeof(bdd));
    for (int c = 0; c < columns; c++)
        for (int r = 0; r < rows; r++)
        {
            int a = c * rows + r;
            if (r + 1 < rows)
            {
                made[a * nodes + a + 1] = made[(a + 1) * nodes + a] = bdd_ithvar(next++);
            }
            if (c + 1 < columns)
            {
                made[a * nodes + a + rows] = made[(a + rows) * nodes + a] = bdd_ithvar(next++);
            }
        }
    for (int x = 1; x + 1 < nodes; x++)
        for (int a = 0; a < nodes; a++)
            for (int b = a + 1; b < nodes; b++)
            {
                bdd left = made[a * nodes + x], right = made[x * nodes + b];
                if ((a > 0 && a <= x) || b <= x || left == bddfalse || right == bddfalse)
                    continue;
                keep(&made[a * nodes + b], bdd_or(made[a * nodes + b], bdd_and(left, right)));
                made[b * nodes + a] = made[a * nodes + b];
            }
    bdd result = made[nodes - 1];
    free(made);
    return result;
}

static void report(const char *name, int variables, int first, int second, int times)
{
    double best = 1e9, count = 0;
    int size = 0;
    for (int i = 0; i < times; i++)
    {
        begin(variables);
        double start = now();
        bdd result = second ? grid(first, second) : queens(first);
        double spent = now() - start;
        best = spent < best ? spent : best;
        size = bdd_nodecount(result);
        count = bdd_satcountln(result);
        bdd_done();
    }
    printf("%s %.3f %d 2^%.4f\n", name, best, size, count);
}

int main(void)
{
    report("queens8", 64, 8, 0, 5);
    report("queens9", 81, 9, 0, 3);
    report("queens10", 100, 10, 0, 2);
    report("grid5x6", 49, 5, 6, 5);
    report("grid3x40", 197, 3, 40, 5);
    return 0;
}
