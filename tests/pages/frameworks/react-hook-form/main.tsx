/** @jsxImportSource react */
import { createRoot } from 'react-dom/client'
import { useForm } from 'react-hook-form'

function Page() {
  const { register, getValues, formState } = useForm({ mode: 'onChange' })
  window.pageState = () => ({ ...getValues(), valid: formState.isValid, submitted: formState.isSubmitted })
  return (
    <form>
      <label>
        Street address <input {...register('street', { required: true })} />
      </label>
      <label>
        CFM50 <input type="number" {...register('flow', { valueAsNumber: true, min: 100 })} />
      </label>
      <label>
        Test date <input type="date" {...register('date')} />
      </label>
      <label>
        Range{' '}
        <select {...register('range')}>
          <option value="">Select</option>
          <option value="a">wide</option>
          <option value="b">middle</option>
        </select>
      </label>
      <label>
        Work locations{' '}
        <select multiple {...register('places')}>
          <option value="attic">Attic</option>
          <option value="crawl">Crawl space</option>
          <option value="rim">Rim joist</option>
        </select>
      </label>
      <fieldset>
        <legend>Result</legend>
        {['Pass', 'Fail'].map((each) => (
          <label key={each}>
            <input type="radio" value={each} {...register('result')} /> {each}
          </label>
        ))}
      </fieldset>
      <label>
        <input type="checkbox" {...register('sealed')} /> Attic sealed
      </label>
      <label>
        Comments <textarea {...register('comments')} />
      </label>
    </form>
  )
}

const root = document.createElement('main')
document.body.append(root)
createRoot(root).render(<Page />)
