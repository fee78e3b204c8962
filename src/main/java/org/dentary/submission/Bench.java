package org.dentary.submission;

import java.util.List;
import java.util.UUID;
import org.dentary.specimen.Preservation;

/**
 * What was typed on the page of a submission; every field may be null.
 *
 * @param leavingReason why tubes go although something came to speak against it
 * @param keptCode code of a tube that is kept differently, or codes that come back
 * @param counted what was counted in
 */
record Bench(
        String code,
        String box,
        String overrideReason,
        String carrier,
        String waybill,
        String shipper,
        String leavingReason,
        String keptCode,
        String keptReason,
        Piece piece,
        Counted counted) {
    static final Bench EMPTY = packing(null, null, null);

    /**
     * A piece as it was typed.
     *
     * @param from code of the tube it was cut from
     * @param code label put on the piece
     * @param preservation how it is kept
     */
    record Piece(String from, String code, String preservation, String reason) {
        static final Piece NONE = new Piece(null, null, Preservation.FORMALIN.name(), null);
    }

    /**
     * A count as it was typed.
     *
     * @param occurredAt day and time on the clock of {@code zone}; empty for now
     * @param photos those kept when the form was sent before; never null
     */
    record Counted(
            String codes,
            String damaged,
            boolean fromList,
            String occurredAt,
            String zone,
            String reason,
            List<UUID> photos) {
        static final Counted NOTHING = new Counted(null, null, false, null, null, null, List.of());

        /** Whether more than codes was typed, so that the rest of the form is shown open. */
        public boolean isDetailed() {
            return isSaid(damaged) || fromList || isSaid(occurredAt) || isSaid(reason) || !photos.isEmpty();
        }

        private static boolean isSaid(String text) {
            return text != null && !text.isBlank();
        }
    }

    static Bench packing(String code, String box, String overrideReason) {
        return new Bench(code, box, overrideReason, null, null, null, null, null, null, Piece.NONE, Counted.NOTHING);
    }

    static Bench leaving(String carrier, String waybill, String shipper, String reason) {
        return new Bench(null, null, null, carrier, waybill, shipper, reason, null, null, Piece.NONE, Counted.NOTHING);
    }

    static Bench keeping(String code, String reason) {
        return new Bench(null, null, null, null, null, null, null, code, reason, Piece.NONE, Counted.NOTHING);
    }

    static Bench cutting(Piece piece) {
        return new Bench(null, null, null, null, null, null, null, null, null, piece, Counted.NOTHING);
    }

    static Bench counting(Counted counted) {
        return new Bench(null, null, null, null, null, null, null, null, null, Piece.NONE, counted);
    }
}
