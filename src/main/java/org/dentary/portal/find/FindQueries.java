package org.dentary.portal.find;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;

/** Looks for what is no label: identifiers, accession numbers, submissions, blocks, kits; one query, each part by index. */
@ApplicationScoped
class FindQueries {
    private static final String FIND = """
            select 'ANIMAL', i.kit, 'Animal with ' || lower(replace(i.type, '_', ' ')) || ' ' || i.value
                   || case when i.issuer = '' then '' else ' (' || i.issuer || ')' end
              from animal_identifier i where upper(i.value) = upper(:text)
            union
            select 'ANIMAL', l.kit_bound, 'Animal with accession ' || f.accession || coalesce(', item ' || f.item, '')
                   || ' at ' || y.name
              from finding f
              join finding_specimen fs on fs.finding = f.id
              join label l on l.code = fs.code
              join laboratory y on y.code = f.laboratory
             where :results and upper(f.accession) = upper(:text)
            union
            select 'SUBMISSION', cast(s.id as text), 'Submission ' || s.number || ' to ' || y.name
                   || coalesce(', waybill ' || s.waybill, '')
              from submission s join laboratory y on y.code = s.laboratory
             where :submissions
               and (s.number = case when :text ~ '^[0-9]{1,18}$' then cast(:text as bigint) end
                    or upper(s.waybill) = upper(:text) or cast(s.id as text) = lower(:text))
               and (:knowing or case when exists (select 1 from submission_specimen r where r.submission = s.id)
                    then exists (select 1 from submission_specimen x join label hl on hl.code = x.code
                                   left join embargo e on e.kit = hl.kit_bound
                                  where x.submission = s.id
                                    and (e.since is null or s.purpose <> 'CONFIRMATORY' and x.recorded_at < e.since))
                    else s.purpose <> 'CONFIRMATORY' end)
            union
            select 'BLOCK', cast(b.id as text), 'Block of ' || b.kits || ' kits at ' || t.name
              from kit_block b join station t on t.code = b.station
             where :blocks and cast(b.id as text) = lower(:text)
            union
            select case when a.kit is null then 'LABEL' else 'ANIMAL' end,
                   case when a.kit is null then (select min(l.code) from label l where l.kit_bound = k.code) else k.code end,
                   case when a.kit is null then 'Kit ' || k.code || ', nothing recorded yet' else 'Animal of kit ' || k.code end
              from kit k left join animal a on a.kit = k.code
             where k.code = :stem
            order by 1, 3, 2
            limit 51
            """;

    private final EntityManager entities;

    FindQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A match before it knows its page. */
    record Row(String kind, String key, String words) {}

    /**
     * What matches a text exactly, capitals aside; at most 51.
     *
     * @param stem the kit that the text may be, or empty
     * @param knowing whether submissions may be found that would tell of an outcome not released
     * @param results whether accession numbers may be looked for: that one exists says that something was reported
     */
    @SuppressWarnings("unchecked")
    List<Row> find(String text, String stem, boolean results, boolean submissions, boolean knowing, boolean blocks) {
        return entities.createNativeQuery(FIND, Row.class)
                .setParameter("text", text)
                .setParameter("stem", stem)
                .setParameter("results", results)
                .setParameter("submissions", submissions)
                .setParameter("knowing", knowing)
                .setParameter("blocks", blocks)
                .getResultList();
    }
}
