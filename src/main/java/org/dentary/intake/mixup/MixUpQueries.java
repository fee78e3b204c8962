package org.dentary.intake.mixup;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/** Finds suspected mix-ups, in one statement a page, and keeps what was set aside. */
@ApplicationScoped
class MixUpQueries {
    /**
     * Which suspicions.
     *
     * @param all with those that were set aside
     * @param everywhere of every station, else of those named
     */
    record Reach(boolean all, boolean everywhere, List<String> stations) {}

    /** A suspicion as found. */
    record Row(
            String kit,
            String other,
            String sign,
            String detail,
            String station,
            String stationName,
            LocalDate diedOn,
            Instant at,
            String zone,
            String setAside) {
        MixUp view() {
            return new MixUp(kit, other, Sign.valueOf(sign), detail, station, stationName, diedOn, at, zone, setAside);
        }
    }

    /** When the animals before a moment were recorded, as far back as a page looks; none where fewer were. */
    private static final String FLOOR = """
            select recorded_at from animal where recorded_at < :at order by recorded_at desc offset :animals limit 1
            """;

    /**
     * Signs that came up between two moments; that of two animals when the second was taken in, so that what is looked for
     * is bounded whatever the age of the service. Pairs are told once, the kit with the smaller code first. A jaw alone is
     * held against the nearest tissue by time of intake, and a number that many carry against ten of them, so that neither
     * a busy day nor a number like "none" gives the product of its animals. {@code offset 0} keeps each question of one
     * animal a look-up by an index; a hash of every label would grow with the service.
     */
    private static final String FIND = """
            with intake as (
                select kit, species, sex, died_on, died_on_precision, station, recorded_at
                  from animal
                 where recorded_at between :floor and :at and not entered_in_error and same_as is null),
            alike as (
                select x.kit as one, o.kit as two, string_agg(distinct i.type || ' ' || i.value, '; ') as detail,
                       x.recorded_at as at
                  from intake x
                 cross join lateral (select type, value from animal_identifier where kit = x.kit offset 0) i
                 cross join lateral (
                      select y.kit
                        from animal_identifier b join animal y on y.kit = b.kit
                       where upper(b.value) = upper(i.value) and b.type = i.type
                         and (y.recorded_at, y.kit) < (x.recorded_at, x.kit)
                         and not y.entered_in_error and y.same_as is null
                       order by b.kit limit 10) o
                 group by x.kit, o.kit, x.recorded_at),
            jaw as (
                select x.* from intake x
                 where x.died_on is not null and x.died_on_precision = 'DAY'
                   and exists (select 1 from jaw_reading r where r.kit = x.kit offset 0)
                   and not exists (select 1 from label l join specimen s on s.code = l.code
                                    where l.kit_bound = x.kit offset 0)),
            tissue as materialized (
                select b.kit, b.station, b.died_on, b.species, b.sex, b.recorded_at
                  from (select distinct station, died_on, species, sex from jaw) d
                 cross join lateral (
                      select * from animal
                       where station = d.station and died_on = d.died_on and species = d.species and sex = d.sex
                      offset 0) b
                 where b.died_on_precision = 'DAY' and not b.entered_in_error and b.same_as is null
                   and not exists (select 1 from jaw_reading r where r.kit = b.kit offset 0)
                   and exists (select 1 from label l join specimen s on s.code = l.code
                                where l.kit_bound = b.kit offset 0)),
            nearest as (
                select distinct on (a.kit) a.kit as one, b.kit as two, a.recorded_at as at
                  from jaw a
                  join tissue b on b.station = a.station and b.died_on = a.died_on and b.species = a.species
                   and b.sex = a.sex
                 order by a.kit, abs(extract(epoch from b.recorded_at - a.recorded_at)), b.kit),
            scanned as (
                select least(p.kit, p.other) as one, greatest(p.kit, p.other) as two,
                       string_agg(m.codes, '; ' order by m.at) as detail, max(m.at) as at
                  from (select distinct least(kit, other) as kit, greatest(kit, other) as other
                          from scan_mismatch where at between :floor and :at) p
                  join scan_mismatch m on m.kit = p.kit and m.other = p.other or m.kit = p.other and m.other = p.kit
                 group by p.kit, p.other),
            misfit as (
                select r.kit, string_agg(distinct rule.value ->> 'rule', ' ') as detail, max(r.received_at) as at
                  from jaw_reading r
                 cross join lateral json_array_elements(cast(r.contradictions as json)) as rule(value)
                 where r.kit in (select n.kit from jaw_reading n
                                  where n.received_at between :floor and :at
                                    and (n.contradictions like '%"J11"%' or n.contradictions like '%"J20"%'))
                   and rule.value ->> 'rule' in ('J11', 'J20')
                   and not exists (select 1 from designated_age d where d.kit = r.kit and d.at > r.received_at)
                 group by r.kit),
            signs as (
                select least(one, two) as kit, greatest(one, two) as other, 'SAME_IDENTIFIER' as sign, detail, at
                  from alike
                union all
                select least(one, two), greatest(one, two), 'TWO_HALVES', '', at from nearest
                union all
                select one, two, 'SCANNED_TOGETHER', detail, at from scanned where at <= :at
                union all
                select l.kit_bound, cast(null as text), 'WRONG_ID', d.code || coalesce(': ' || d.evidence, ''), d.opened_at
                  from discrepancy d join label l on l.code = d.code
                 where d.opened_at between :floor and :at and (d.kind = 'WRONG_ID' or d.outcome = 'MISLABEL')
                   and not exists (select 1 from re_attribution r join re_attribution_decision c
                                       on c.re_attribution = r.id and c.confirmed
                                    where r.code = d.code and c.at > d.opened_at)
                union all
                select kit, cast(null as text), 'JAW_OF_ANOTHER', detail, at from misfit where at <= :at)
            select s.kit, s.other, s.sign, s.detail, a.station, st.name, a.died_on, s.at, st.time_zone, aside.words
              from signs s
              join animal a on a.kit = (select kit from animal where kit in (s.kit, s.other)
                                         order by kit <> s.kit limit 1)
              join station st on st.code = a.station
              left join lateral (
                  select coalesce(p.name, m.by_actor) || ': ' || m.reason as words
                    from mix_up_set_aside m left join person p on p.code = m.by_actor
                   where m.kit = s.kit and m.other is not distinct from s.other and m.sign = s.sign and m.at >= s.at
                   order by m.at desc limit 1) aside on true
             where not a.entered_in_error
               and (s.at, s.sign, s.kit, coalesce(s.other, '')) < (:at, :sign, :kit, :other)
               and (:everywhere or a.station = any(:stations))
               and (:all or aside.words is null)
               and not exists (select 1 from animal x where x.kit in (s.kit, s.other) and x.same_as in (s.kit, s.other))
               and not exists (select 1 from re_attribution r join re_attribution_decision c
                                   on c.re_attribution = r.id and c.confirmed
                                where s.other is not null and r.from_kit in (s.kit, s.other)
                                  and r.to_kit in (s.kit, s.other) and c.at > s.at)
             order by s.at desc, s.sign desc, s.kit desc, coalesce(s.other, '') desc
             limit :most
            """;

    private static final String SET_ASIDE = """
            insert into mix_up_set_aside (id, kit, other, sign, reason, by_actor, at)
            values (:id, :kit, cast(:other as text), :sign, :reason, :actor, :at)
            """;
    private static final String IS_SET_ASIDE = "select exists (select 1 from mix_up_set_aside where id = :id)";
    private static final String MISMATCH = """
            insert into scan_mismatch (kit, other, codes, by_actor, at)
            select :kit, other, :codes, :actor, :at from unnest(:others) other
            on conflict do nothing
            """;

    private final EntityManager entities;

    MixUpQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** The moment to which a page looks back from its mark; null where it is the beginning. */
    @SuppressWarnings("unchecked")
    Instant floor(Instant at, int animals) {
        List<Instant> found = entities.createNativeQuery(FLOOR)
                .setParameter("at", at)
                .setParameter("animals", animals)
                .getResultList();
        return found.isEmpty() ? null : found.get(0);
    }

    /** Signs after a mark and not before a moment, newest first. */
    @SuppressWarnings("unchecked")
    List<Row> find(MixUpMark after, Instant floor, Reach reach, int most) {
        return entities.createNativeQuery(FIND, Row.class)
                .setParameter("at", after.at())
                .setParameter("sign", after.sign())
                .setParameter("kit", after.kit())
                .setParameter("other", after.other())
                .setParameter("floor", floor)
                .setParameter("all", reach.all())
                .setParameter("everywhere", reach.everywhere())
                .setParameter("stations", reach.stations().toArray(String[]::new))
                .setParameter("most", most)
                .getResultList();
    }

    void setAside(UUID id, String kit, String other, Sign sign, String reason, String actor, Instant at) {
        entities.createNativeQuery(SET_ASIDE)
                .setParameter("id", id)
                .setParameter("kit", kit)
                .setParameter("other", other)
                .setParameter("sign", sign.name())
                .setParameter("reason", reason)
                .setParameter("actor", actor)
                .setParameter("at", at)
                .executeUpdate();
    }

    boolean isSetAside(UUID id) {
        return (Boolean)
                entities.createNativeQuery(IS_SET_ASIDE).setParameter("id", id).getSingleResult();
    }

    void mismatch(String kit, List<String> others, String codes, String actor, Instant at) {
        entities.createNativeQuery(MISMATCH)
                .setParameter("kit", kit)
                .setParameter("others", others.toArray(String[]::new))
                .setParameter("codes", codes)
                .setParameter("actor", actor)
                .setParameter("at", at)
                .executeUpdate();
    }
}
