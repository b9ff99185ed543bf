-- Which findings come how often, by the month that a job was opened.
-- Year and month are 0 for records that say no day. A finding that a signed concession accepts is counted apart.
WITH dated AS (
  SELECT
    COALESCE(EXTRACT(YEAR FROM jobs.opened), 0) AS opened_year,
    COALESCE(EXTRACT(MONTH FROM jobs.opened), 0) AS opened_month,
    findings.code AS code,
    findings.record AS record,
    CASE WHEN findings.accepted THEN 1 ELSE 0 END AS accepted
  FROM findings
  JOIN jobs ON jobs.record = findings.record
)
SELECT
  dated.opened_year AS opened_year,
  dated.opened_month AS opened_month,
  dated.code AS code,
  COUNT(*) AS found,
  SUM(dated.accepted) AS accepted,
  COUNT(DISTINCT dated.record) AS records
FROM dated
GROUP BY dated.opened_year, dated.opened_month, dated.code
ORDER BY opened_year, opened_month, code
