package org.dentary.codes.symbol;

import com.google.zxing.common.BitMatrix;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * A code drawn as modules, without its quiet zone. Code 128 has one row, whose height the printer chooses; the others are
 * square.
 */
public final class Symbol {

    private final Symbology symbology;
    private final String text;
    private final BitMatrix modules;

    Symbol(Symbology symbology, String text, BitMatrix modules) {
        this.symbology = symbology;
        this.text = text;
        this.modules = modules;
    }

    /** Which symbology it is drawn in. */
    public Symbology symbology() {
        return symbology;
    }

    /** The text a scanner reads from it. */
    public String text() {
        return text;
    }

    /** Its width in modules, without quiet zones. */
    public int columns() {
        return modules.getWidth();
    }

    /** Its height in modules, 1 where it is linear. */
    public int rows() {
        return modules.getHeight();
    }

    /** Its width in modules, quiet zones included. */
    public int columnsWithQuiet() {
        return columns() + 2 * symbology.quietModules();
    }

    /** Whether the module is dark, counted from the top left at (0, 0). */
    public boolean isDark(int column, int row) {
        return modules.get(column, row);
    }

    /** The dark modules of a row as runs, left to right. */
    public List<Run> darkInRow(int row) {
        return runs(columns(), column -> isDark(column, row));
    }

    /** The dark modules of a column as runs, top to bottom. */
    public List<Run> darkInColumn(int column) {
        return runs(rows(), row -> isDark(column, row));
    }

    private static List<Run> runs(int length, IntPredicate dark) {
        List<Run> runs = new ArrayList<>();
        int from = 0;
        while (from < length) {
            int to = from;
            while (to < length && dark.test(to)) {
                to++;
            }
            if (to > from) {
                runs.add(new Run(from, to - from));
            }
            from = to + 1;
        }
        return runs;
    }

    /** Dark modules side by side. */
    public record Run(int from, int length) {}
}
