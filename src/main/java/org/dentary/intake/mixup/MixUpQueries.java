package org.dentary.intake.mixup;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/** Finds suspected mix-ups, in one statement, and keeps what was set aside. */
@ApplicationScoped
class MixUpQueries {
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

    // Pairs are told once, the kit with the smaller code first. Halves are paired with the nearest by time of intake,
    // so
    // that a busy day gives as many suspicions as it has halves and not their product.
    private static final String FIND = """
            with counting as (
                select kit, species, sex, died_on, died_on_precision, station, recorded_at, season
                  from animal where not entered_in_error and same_as is null),
            tissue as (
                select distinct l.kit_bound as kit from specimen s join label l on l.code = s.code),
            halves as (
                select c.*, t.kit is not null as has_tissue
                  from counting c left join tissue t on t.kit = c.kit
                 where c.died_on_precision = 'DAY' and c.died_on is not null
                   and (t.kit is not null) <> exists (select 1 from jaw_reading r where r.kit = c.kit)),
            nearest as (
                select distinct on (a.kit) a.kit as one, b.kit as two, greatest(a.recorded_at, b.recorded_at) as at
                  from halves a
                  join halves b on b.station = a.station and b.died_on = a.died_on and b.sex = a.sex
                   and b.species = a.species and b.has_tissue and not a.has_tissue
                 order by a.kit, abs(extract(epoch from b.recorded_at - a.recorded_at)), b.kit),
            signs as (
                select least(a.kit, b.kit) as kit, greatest(a.kit, b.kit) as other, 'SAME_IDENTIFIER' as sign,
                       a.type || ' ' || a.value as detail, greatest(x.recorded_at, y.recorded_at) as at
                  from animal_identifier a
                  join animal_identifier b on upper(b.value) = upper(a.value) and b.type = a.type and b.kit > a.kit
                  join counting x on x.kit = a.kit join counting y on y.kit = b.kit
                union all
                select least(one, two), greatest(one, two), 'TWO_HALVES', '', at from nearest
                union all
                select least(m.kit, m.other), greatest(m.kit, m.other), 'SCANNED_TOGETHER',
                       string_agg(m.codes, '; ' order by m.at), max(m.at)
                  from scan_mismatch m
                 where exists (select 1 from animal a where a.kit in (m.kit, m.other))
                 group by 1, 2
                union all
                select l.kit_bound, cast(null as text), 'WRONG_ID',
                       d.code || coalesce(': ' || d.evidence, ''), d.opened_at
                  from discrepancy d join label l on l.code = d.code
                 where (d.kind = 'WRONG_ID' or d.outcome = 'MISLABEL')
                   and not exists (select 1 from re_attribution r join re_attribution_decision c
                                       on c.re_attribution = r.id and c.confirmed
                                    where r.code = d.code and c.at > d.opened_at)
                union all
                select r.kit, cast(null as text), 'JAW_OF_ANOTHER',
                       string_agg(distinct rule.value ->> 'rule', ' '), max(r.received_at)
                  from jaw_reading r
                  cross join lateral json_array_elements(cast(r.contradictions as json)) as rule(value)
                 where r.contradictions <> '[]' and rule.value ->> 'rule' in ('J11', 'J20')
                   and not exists (select 1 from designated_age d where d.kit = r.kit and d.at > r.received_at)
                 group by r.kit)
            select s.kit, s.other, s.sign, s.detail, a.station, st.name, a.died_on, s.at, st.time_zone, aside.words
              from signs s
              join animal a on a.kit = (select kit from animal where kit in (s.kit, s.other)
                                         order by kit <> s.kit limit 1)
              join station st on st.code = a.station
              left join lateral (
                  select coalesce(p.name, by_actor) || ': ' || reason as words, m.at from mix_up_set_aside m left join person p on p.code = m.by_actor
                   where m.kit = s.kit and m.other is not distinct from s.other and m.sign = s.sign and m.at >= s.at
                   order by m.at desc limit 1) aside on true
             where not a.entered_in_error
               and (:everywhere or a.station = any(:stations))
               and (:all or aside.words is null)
               and not exists (select 1 from animal x where x.kit in (s.kit, s.other) and x.same_as in (s.kit, s.other))
               and not exists (select 1 from re_attribution r join re_attribution_decision c
                                   on c.re_attribution = r.id and c.confirmed
                                where s.other is not null and r.from_kit in (s.kit, s.other)
                                  and r.to_kit in (s.kit, s.other) and c.at > s.at)
             order by s.at desc, s.kit, s.other, s.sign
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

    @SuppressWarnings("unchecked")
    List<Row> find(boolean all, boolean everywhere, List<String> stations, int most) {
        return entities.createNativeQuery(FIND, Row.class)
                .setParameter("all", all)
                .setParameter("everywhere", everywhere)
                .setParameter("stations", stations.toArray(String[]::new))
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
